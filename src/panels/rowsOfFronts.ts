import type { ExpandedPanel } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { Axis } from '../model/geometry.ts';
import type { MatchPlace } from '../model/part.ts';
import type { Materials } from './materials.ts';
import type { PanelShape } from './orientPanel.ts';

interface Shaped {
  readonly panel: ExpandedPanel;
  readonly materials: Materials;
  readonly shape: PanelShape;
}

/**
 * Orders each row of fronts of a unit so that the grain runs on through it: along the axis along which they follow each
 * other, lowest first. A row of one, or in a finish without grain, needs no matching.
 */
export function rowsOfFronts(
  unit: string,
  shapes: readonly Shaped[],
  findings: Finding[],
): ReadonlyMap<ExpandedPanel, MatchPlace> {
  const rows = new Map<string, Shaped[]>();
  for (const shaped of shapes) {
    const { match, grain } = shaped.panel;
    if (match === null || grain === null || !shaped.materials.finish.grain) continue;
    rows.set(match, [...(rows.get(match) ?? []), shaped]);
  }
  const places = new Map<ExpandedPanel, MatchPlace>();
  for (const [name, row] of rows) {
    const first = row[0]!;
    if (row.length < 2) continue;
    const axis = [first.shape.length, first.shape.width].find((along) => follow(row, along));
    if (axis === undefined || !row.every((shaped) => sameKind(shaped, first))) {
      findings.push({
        code: 'row-broken',
        severity: 'error',
        message: `the fronts of the row “${name}” of ${unit} do not stand one after the other in one plane and one board`,
        place: first.panel.place,
        found: row.map((shaped) => shaped.panel.name).join(', '),
        advice: 'give fronts that stand elsewhere a row of their own',
      });
      continue;
    }
    const follows = axis === first.shape.length ? 'length' : 'width';
    sorted(row, axis).forEach((shaped, position) => {
      places.set(shaped.panel, { run: `${unit} ${name}`, position, follows });
    });
  }
  return places;
}

function sorted(row: readonly Shaped[], axis: Axis): Shaped[] {
  return row.toSorted((a, b) => a.panel.box[axis][0] - b.panel.box[axis][0]);
}

/** Fronts that overlap a little still follow each other: the assembly check has the better sentence for that. */
function follow(row: readonly Shaped[], axis: Axis): boolean {
  const extents = sorted(row, axis).map((shaped) => shaped.panel.box[axis]);
  return extents.every((extent, index) => {
    const before = extents[index - 1];
    return before === undefined || (before[0] < extent[0] && before[1] < extent[1]);
  });
}

function sameKind(a: Shaped, b: Shaped): boolean {
  return (
    a.shape.length === b.shape.length &&
    a.shape.thickness === b.shape.thickness &&
    a.panel.box[a.shape.thickness][0] === b.panel.box[b.shape.thickness][0] &&
    a.materials.board.id === b.materials.board.id &&
    a.materials.finish.id === b.materials.finish.id
  );
}
