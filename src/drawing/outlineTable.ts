import { axisFaces } from '../basics/boxes.ts';
import type { Panel, PlacedUnit } from '../model/furniture.ts';
import { printLength, printNamedLength } from './lengthsInWords.ts';
import type { Table } from './tables.ts';
import type { FurnitureDrawingOptions } from './unitTitle.ts';

/** What a panel's corners are measured from, and what is left on along the wall. */
function panelWords(
  panel: Panel,
  names: readonly string[],
  { words, units = 'mm' }: FurnitureDrawingOptions,
): string {
  const says = words.furniture.outlines;
  const edge = (axis: Panel['lengthAxis']) => words.furniture.faces[axisFaces[axis][0]];
  const from = says.from(names.join(', '), edge(panel.lengthAxis), edge(panel.widthAxis));
  const left = (panel.scribed ?? [])
    .filter(({ allowanceUm }) => allowanceUm > 0)
    .map(({ face, allowanceUm }) =>
      says.scribing(printNamedLength(allowanceUm, units), words.furniture.faces[face]),
    );
  return [from, ...left].join('; ');
}

/**
 * Corners of the outlines of a unit's panels as they are marked out on the sawn panels, the allowance for scribing left
 * on, panels of one outline together; null where every panel is a rectangle.
 */
export function outlineTable(unit: PlacedUnit, options: FurnitureDrawingOptions): Table | null {
  const { words, units = 'mm' } = options;
  const { title, shortTitle, columns } = words.furniture.outlines;
  const alike = new Map<string, { numbers: number[]; names: string[]; panel: Panel }>();
  for (const panel of unit.panels) {
    if (panel.byHand?.outline === undefined) continue;
    const key = JSON.stringify([panel.lengthAxis, panel.widthAxis, panel.scribed, panel.byHand.outline]);
    const same = alike.get(key) ?? { numbers: [], names: [], panel };
    same.numbers.push(panel.number);
    same.names.push(panel.name);
    alike.set(key, same);
  }
  const rows = [...alike.values()].flatMap(({ numbers, names, panel }) =>
    panel.byHand!.outline!.map((point, index) => [
      index === 0 ? numbers.join(', ') : '',
      index === 0 ? panelWords(panel, names, options) : '',
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
      { heading: columns[0], widthMm: 11, anchor: 'end', weight: 'bold' },
      { heading: columns[1], widthMm: 40, grows: true },
      { heading: columns[2], widthMm: 10, anchor: 'end' },
      { heading: columns[3], widthMm: 20, anchor: 'end' },
      { heading: columns[4], widthMm: 20, anchor: 'end' },
    ],
    rows,
  };
}
