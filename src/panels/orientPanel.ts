import { axes, extentSize } from '../basics/boxes.ts';
import { printMm } from '../basics/lengths.ts';
import type { ExpandedPanel } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { Axis } from '../model/geometry.ts';
import type { Materials } from './materials.ts';

/** Which axis of the unit each size of a panel runs along. */
export interface PanelShape {
  readonly length: Axis;
  readonly width: Axis;
  readonly thickness: Axis;
}

/**
 * Tells thickness, length and width of a box apart. The thickness is the one side that is as thick as the board; where
 * two sides are, the grain decides, since it never runs through the thickness. The length runs with the grain; without
 * a grain it is the longer side.
 */
export function orientPanel(
  panel: ExpandedPanel,
  materials: Materials,
  unit: string,
  findings: Finding[],
): PanelShape | null {
  const sizes = axes.map((axis) => extentSize(panel.box[axis]));
  const boardUm = materials.board.thicknessUm;
  const thick = axes.filter((axis) => extentSize(panel.box[axis]) === boardUm);
  const possible = thick.filter((axis) => axis !== panel.grain);
  const thickness = possible[0];
  const report = (code: string, message: string, advice: string) => {
    findings.push({
      code,
      severity: 'error',
      message,
      place: panel.place,
      found: sizes.map((um) => `${printMm(um)} mm`).join(' × '),
      advice,
    });
    return null;
  };
  const name = `the ${panel.name} of ${unit}`;
  if (thickness === undefined) {
    const grain = thick.length === 0 ? '' : ` once the grain along ${panel.grain} is kept`;
    return report(
      'no-thickness',
      `no side of ${name} is as thick as its board, which is ${printMm(boardUm)} mm${grain}`,
      `make one side of the box thickness.${panel.role}`,
    );
  }
  if (possible.length > 1) {
    return report(
      'thickness-unclear',
      `more than one side of ${name} is ${printMm(boardUm)} mm, as thick as its board`,
      'state the grain axis, or change one of its sides',
    );
  }
  const [first, second] = axes.filter((axis) => axis !== thickness) as [Axis, Axis];
  const firstIsLength =
    panel.grain === null
      ? extentSize(panel.box[first]) >= extentSize(panel.box[second])
      : panel.grain === first;
  return { length: firstIsLength ? first : second, width: firstIsLength ? second : first, thickness };
}
