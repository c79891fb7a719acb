import {
  drawLayout,
  drawUnit,
  drawUnitOnOnePage,
  type FurnitureDrawingOptions,
} from '../../drawing/index.ts';
import { printLength } from '../../drawing/lengthsInWords.ts';
import type { CountedFitting, PlacedUnit } from '../../model/furniture.ts';
import type { Fitting } from '../../model/library.ts';
import { assemblySteps } from './assembly.ts';
import type { Block, Row, Section, TextBlock } from './book.ts';
import { columnsOf } from './columns.ts';
import { type BookFacts, sizeText } from './subject.ts';

/** What a panel is let into, by the numbers that stand on the drawing, and how deep. */
function housingsText({ words, numberOf, units }: BookFacts, panel: PlacedUnit['panels'][number]): string {
  const depths = [...new Set(panel.housings.map(({ depthUm }) => depthUm))];
  return depths
    .map((depthUm) => {
      const into = panel.housings.filter((housing) => housing.depthUm === depthUm);
      const numbers = into.map((housing) => String(numberOf(housing.into))).join(', ');
      return words.units.into(numbers, printLength(depthUm, units));
    })
    .join('; ');
}

function panelRows(facts: BookFacts, unit: PlacedUnit): Row[] {
  const { words, numberOf, title, units } = facts;
  const openings = ({ cutOuts }: PlacedUnit['panels'][number]) =>
    cutOuts.map(({ name, alongLength, alongWidth }) => {
      const size = sizeText(
        (alongLength[1] - alongLength[0]) / 1000,
        (alongWidth[1] - alongWidth[0]) / 1000,
        units,
      );
      return words.drawings.furniture.opening(name, size);
    });
  return unit.panels.map((panel) => ({
    cells: [
      String(numberOf(panel.id)),
      [panel.name, ...openings(panel)].join('; '),
      String(panel.count),
      sizeText(panel.finishedLengthUm / 1000, panel.finishedWidthUm / 1000, units),
      `${panel.board}, ${title(panel.finish)}`,
      housingsText(facts, panel),
      (panel.massKg * panel.count).toFixed(1),
    ],
  }));
}

function drawingOptions({ measure, plan, ordered, words, units }: BookFacts): FurnitureDrawingOptions {
  const library = ordered?.library;
  const kinds = library ? [library.boards, library.finishes, library.fittings, library.units] : [];
  const titles = new Map(
    kinds.flatMap((kind) => [...kind.values()].map((thing) => [thing.id, thing.title] as const)),
  );
  return {
    measure,
    words: words.drawings,
    units,
    job: plan.job,
    titles,
    tables: 'left out',
    pageNumber: 'left out',
  };
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
  const drawings = drawLayout({ ...furniture, units }, vehicle, library.finishes, {
    ...drawingOptions(facts),
    page: facts.page,
  });
  const { heading } = words.layout;
  const blocks: Block[] = [{ kind: 'drawings', label: heading, drawings, pieces: [] }];
  return [{ id: 'layout', heading, level: 2, startsPage: true, blocks }];
}

/** The pages of one unit, from which it is put together: its drawings, its panels and its fittings. */
function unitChapter(facts: BookFacts, unit: PlacedUnit, index: number): Section {
  const { words, ordered } = facts;
  const says = words.units;
  const { x, y, z } = unit.outside;
  const size = ([from, to]: readonly [number, number]) => printLength(to - from, facts.units);
  const massKg = unit.panels.reduce((sum, panel) => sum + panel.massKg * panel.count, 0);
  const drawn = numbered(unit, facts.numberOf);
  const drawings = drawUnit(drawn, drawingOptions(facts));
  const onOnePage = drawUnitOnOnePage(drawn, drawingOptions(facts));
  const attempts = onOnePage === null ? [drawings] : [[onOnePage], drawings];
  const panels: TextBlock[] = [
    { kind: 'paragraph', text: `${says.outside(size(x), size(y), size(z))} ${says.mass(massKg.toFixed(1))}` },
    {
      kind: 'table',
      caption: says.panels,
      columns: columnsOf(says.panelColumns, [-1.4, 4.2, -1.9, 3.4, 4.8, 3, -1.5]),
      rows: panelRows(facts, unit),
    },
  ];
  const fittings: TextBlock =
    unit.fittings.length === 0
      ? { kind: 'paragraph', text: says.noFittings }
      : {
          kind: 'table',
          caption: says.fittings,
          columns: columnsOf(says.fittingColumns, [8, -1.8, 1.6]),
          rows: unit.fittings.map((counted) => ({
            tick: `fitting/${index + 1}/${counted.fitting}`,
            // As the panels beside it: of all that are made alike.
            cells: [
              fittingAndWhere(counted, ordered?.library.fittings.get(counted.fitting)),
              String(counted.count * (ordered?.furniture.count ?? 1)),
              '',
            ],
          })),
        };
  const assembly: TextBlock[] = [
    { kind: 'heading', text: says.assembly.heading },
    { kind: 'steps', steps: assemblySteps(drawn, ordered?.library.fittings ?? new Map(), says.assembly) },
  ];
  const blocks: Block[] = [
    {
      kind: 'drawings',
      label: unit.name,
      drawings,
      pieces: [],
      onPaper: (smaller) => attempts[smaller] ?? null,
      beside: [panels, [fittings], assembly],
    },
  ];
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

/** A fitting with where it goes: as the unit says, or else the library for all of its kind. */
function fittingAndWhere({ fitting, where }: CountedFitting, of: Fitting | undefined): string {
  const said = where ?? (of?.where === undefined ? [] : [of.where]);
  return [of?.title ?? fitting, ...said].join('; ');
}
