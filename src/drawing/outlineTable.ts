import { axisFaces } from '../basics/boxes.ts';
import type { Panel, PlacedUnit } from '../model/furniture.ts';
import { printLength, printNamedLength } from './lengthsInWords.ts';
import type { Table } from './tables.ts';
import type { FurnitureDrawingOptions } from './unitTitle.ts';

/** What a panel's corners are measured from, and what is left on along the wall. */
function panelWords(panel: Panel, { words, units = 'mm' }: FurnitureDrawingOptions): string {
  const says = words.furniture.outlines;
  const edge = (axis: Panel['lengthAxis']) => words.furniture.faces[axisFaces[axis][0]];
  const from = says.from(panel.name, edge(panel.lengthAxis), edge(panel.widthAxis));
  const left = (panel.scribed ?? [])
    .filter(({ allowanceUm }) => allowanceUm > 0)
    .map(({ face, allowanceUm }) =>
      says.scribing(printNamedLength(allowanceUm, units), words.furniture.faces[face]),
    );
  return [from, ...left].join('; ');
}

/**
 * Corners of the outlines of a unit's panels as they are marked out on the sawn panels, the allowance for scribing left
 * on; null where every panel is a rectangle.
 */
export function outlineTable(unit: PlacedUnit, options: FurnitureDrawingOptions): Table | null {
  const { words, units = 'mm' } = options;
  const { title, shortTitle, columns } = words.furniture.outlines;
  const rows = unit.panels.flatMap((panel) =>
    (panel.byHand?.outline ?? []).map((point, index) => [
      index === 0 ? String(panel.number) : '',
      index === 0 ? panelWords(panel, options) : '',
      String(index + 1),
      printLength(point.alongLengthUm, units),
      printLength(point.alongWidthUm, units),
    ]),
  );
  if (rows.length === 0) return null;
  return {
    title,
    shortTitle: words.page.continued(shortTitle),
    columns: [
      { heading: columns[0], widthMm: 6, anchor: 'end', weight: 'bold' },
      { heading: columns[1], widthMm: 40, grows: true },
      { heading: columns[2], widthMm: 10, anchor: 'end' },
      { heading: columns[3], widthMm: 20, anchor: 'end' },
      { heading: columns[4], widthMm: 20, anchor: 'end' },
    ],
    rows,
  };
}
