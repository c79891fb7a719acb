import { printMmShort } from '../../basics/lengths.ts';
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

/** The page of one unit, from which it is put together. Drawings of the unit belong before its tables. */
function unitChapter(facts: BookFacts, unit: PlacedUnit, index: number): Section {
  const { words, ordered } = facts;
  const says = words.units;
  const { x, y, z } = unit.outside;
  const size = ([from, to]: readonly [number, number]) => printMmShort(to - from);
  const massKg = unit.panels.reduce((sum, panel) => sum + panel.massKg * panel.count, 0);
  const blocks: Block[] = [
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
