import type { PlanGroup, PlanPanel } from '../model/plan.ts';
import type { CutPlanWords, PageWords } from './drawingWords.ts';
import type { Units } from './lengthsInWords.ts';
import { SMALL } from './lettering.ts';
import type { Sketch } from './sketch.ts';
import { panelName, panelSize } from './stepTable.ts';
import type { Table } from './tables.ts';

/** Marks in the order a, b, … z, aa, ab, …; `index` from 0. */
export function markAt(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : markAt(Math.floor(index / 26) - 1) + letter;
}

/** The key to the panels that have only a mark on the drawing. */
export function keyTable(
  sketch: Sketch,
  keyed: readonly { readonly panel: PlanPanel; readonly mark: string }[],
  group: PlanGroup,
  units: Units,
  runOf: (panel: PlanPanel) => string,
  says: CutPlanWords['key'],
  page: PageWords,
): Table {
  const rows = keyed.map(({ panel, mark }) => [
    mark,
    [panelName(panel, group), runOf(panel)].filter((text) => text !== '').join(' · '),
    panelSize(panel, units),
    panel.grain === 'length' ? says.yes : says.no,
  ]);
  const sizes = rows.map((row) => sketch.measure(row[2]!, SMALL, 'regular'));
  return {
    title: says.title,
    shortTitle: page.continued(says.shortTitle),
    columns: [
      { heading: says.columns[0], widthMm: 6.5, weight: 'bold' },
      { heading: says.columns[1], widthMm: 0, grows: true },
      { heading: says.columns[2], widthMm: sizes.reduce((a, b) => Math.max(a, b), 9) },
      { heading: says.columns[3], widthMm: 6.8 },
    ],
    rows,
  };
}
