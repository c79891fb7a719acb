import { printMmShort } from '../../basics/lengths.ts';
import { drawLayout, drawUnit, type FurnitureDrawingOptions } from '../../drawing/index.ts';
import type { PlacedUnit } from '../../model/furniture.ts';
import type { Block, Row, Section } from './book.ts';
import { columnsOf } from './columns.ts';
import { type BookFacts, sizeText } from './subject.ts';

function panelRows(facts: BookFacts, unit: PlacedUnit): Row[] {
  const { words, numberOf, title } = facts;
  const names = new Map(unit.panels.map((panel) => [panel.id, `${numberOf(panel.id)} ${panel.name}`]));
  return unit.panels.map((panel) => ({
    cells: [
      String(numberOf(panel.id)),
      panel.name,
      String(panel.count),
      sizeText(panel.finishedLengthUm / 1000, panel.finishedWidthUm / 1000),
      title(panel.board),
      panel.housings
        .map(({ into, depthUm }) => words.units.into(names.get(into) ?? into, printMmShort(depthUm)))
        .join('; '),
      (panel.massKg * panel.count).toFixed(1),
    ],
  }));
}

function drawingOptions({ measure, plan, ordered, words }: BookFacts): FurnitureDrawingOptions {
  const library = ordered?.library;
  const kinds = library ? [library.boards, library.finishes, library.fittings, library.units] : [];
  const titles = new Map(
    kinds.flatMap((kind) => [...kind.values()].map((thing) => [thing.id, thing.title] as const)),
  );
  return { measure, words: words.drawings, job: plan.job, titles };
}

/** The unit with its panels numbered as in the cutting list. */
function numbered(unit: PlacedUnit, numberOf: (panel: string) => number): PlacedUnit {
  return { ...unit, panels: unit.panels.map((panel) => ({ ...panel, number: numberOf(panel.id) })) };
}

/** What stands where in the vehicle; nothing for a plain list. */
export function layoutChapter(facts: BookFacts): Section[] {
  const { ordered, words, numberOf } = facts;
  const vehicle = ordered?.library.vehicles.get(ordered.order.vehicle);
  if (ordered === undefined || vehicle === undefined) return [];
  const { furniture, library } = ordered;
  const units = furniture.units.map((unit) => numbered(unit, numberOf));
  const drawings = drawLayout({ ...furniture, units }, vehicle, library.finishes, drawingOptions(facts));
  const { heading } = words.layout;
  const blocks: Block[] = [{ kind: 'drawings', label: heading, drawings, pieces: [] }];
  return [{ id: 'layout', heading, level: 2, startsPage: true, blocks }];
}

/** The pages of one unit, from which it is put together: its drawings, its panels and its fittings. */
function unitChapter(facts: BookFacts, unit: PlacedUnit, index: number): Section {
  const { words, ordered } = facts;
  const says = words.units;
  const { x, y, z } = unit.outside;
  const size = ([from, to]: readonly [number, number]) => printMmShort(to - from);
  const massKg = unit.panels.reduce((sum, panel) => sum + panel.massKg * panel.count, 0);
  const drawings = drawUnit(numbered(unit, facts.numberOf), drawingOptions(facts));
  const blocks: Block[] = [
    { kind: 'drawings', label: unit.name, drawings, pieces: [] },
    { kind: 'paragraph', text: `${says.outside(size(x), size(y), size(z))} ${says.mass(massKg.toFixed(1))}` },
    {
      kind: 'table',
      caption: says.panels,
      columns: columnsOf(says.panelColumns, [-1.6, 4, -1.8, 3.4, 4.4, 4.2, -1.6]),
      rows: panelRows(facts, unit),
    },
  ];
  if (unit.fittings.length === 0) blocks.push({ kind: 'paragraph', text: says.noFittings });
  else {
    blocks.push({
      kind: 'table',
      caption: says.fittings,
      columns: columnsOf(says.fittingColumns, [8, -1.8, 1.2]),
      rows: unit.fittings.map(({ fitting, count }) => ({
        tick: `fitting/${index + 1}/${fitting}`,
        cells: [ordered?.library.fittings.get(fitting)?.title ?? fitting, String(count), ''],
      })),
    });
  }
  return { id: `unit-${index + 1}`, heading: unit.name, level: 3, startsPage: true, blocks };
}

/** A page for each unit of an order; a plain list has none. */
export function unitChapters(facts: BookFacts): Section[] {
  const units = (facts.ordered?.furniture.units ?? []).map((unit, index) => unitChapter(facts, unit, index));
  if (units.length === 0) return [];
  return [
    { id: 'units', heading: facts.words.units.heading, level: 2, startsPage: false, blocks: [] },
    ...units,
  ];
}
