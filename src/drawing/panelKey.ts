import type { Um } from '../model/geometry.ts';
import type { PlanGroup, PlanPanel } from '../model/plan.ts';
import type { CutPlanWords, PageWords } from './drawingWords.ts';
import { printLength, type Units } from './lengthsInWords.ts';
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

/** A panel whose mark found no place on the drawing, with its left near corner on the raw sheet in µm. */
export interface UnmarkedPanel {
  readonly mark: string;
  readonly leftUm: Um;
  readonly nearUm: Um;
}

/** Places of one row of the table of panels without a mark. */
const PLACES_A_ROW = 12;

/** Where the panels lie that are so crowded that not even their mark found a place. */
export function unmarkedTable(
  unmarked: readonly UnmarkedPanel[],
  units: Units,
  words: CutPlanWords['unmarked'],
  page: PageWords,
): Table {
  const places = new Map<string, string[]>();
  for (const { mark, leftUm, nearUm } of unmarked) {
    const place = words.from(printLength(leftUm, units), printLength(nearUm, units));
    places.set(mark, [...(places.get(mark) ?? []), place]);
  }
  // A few places a row, so that no row is higher than a page.
  const rows = [...places].flatMap(([mark, found]) =>
    Array.from({ length: Math.ceil(found.length / PLACES_A_ROW) }, (_, row) => [
      mark,
      found.slice(row * PLACES_A_ROW, (row + 1) * PLACES_A_ROW).join('; '),
    ]),
  );
  return {
    title: words.title,
    shortTitle: page.continued(words.shortTitle),
    columns: [
      { heading: words.columns[0], widthMm: 6.5, weight: 'bold' },
      { heading: words.columns[1], widthMm: 0, grows: true },
    ],
    rows,
  };
}
