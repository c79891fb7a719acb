import type { PlanGroup, PlanPanel } from '../model/plan.ts';
import { type Faults, toUm } from './pieces.ts';

type Corner = readonly [length: number, width: number];

/** Twice the area within an outline in µm², positive for counter-clockwise (shoelace formula). */
function doubledArea(outline: readonly Corner[]): bigint {
  return outline.reduce((sum, [length, width], index) => {
    const [nextLength, nextWidth] = outline[(index + 1) % outline.length]!;
    const cross = BigInt(toUm(length)) * BigInt(toUm(nextWidth));
    return sum + cross - BigInt(toUm(nextLength)) * BigInt(toUm(width));
  }, 0n);
}

function checkPanel(panel: PlanPanel, faults: Faults): void {
  const { byHand } = panel;
  if (byHand === undefined) return;
  const what = `panel "${panel.name}" ("${panel.id}")`;
  const inside = ([length, width]: Corner) => length <= panel.length && width <= panel.width;
  if (byHand.outline !== undefined) {
    if (!byHand.outline.every(inside)) {
      faults.add('hand-work-wrong', `the outline of ${what} goes over the sawn panel`);
    } else if (doubledArea(byHand.outline) <= 0n) {
      faults.add('hand-work-wrong', `the outline of ${what} does not run counter-clockwise round an area`);
    }
  }
  for (const { name, length, width, kept } of byHand.openings) {
    const opening = `the opening "${name}" of ${what}`;
    if (length[0] >= length[1] || width[0] >= width[1]) {
      faults.add('hand-work-wrong', `${opening} has no size`);
    } else if (!inside([length[1], width[1]])) {
      faults.add('hand-work-wrong', `${opening} goes over the sawn panel`);
    } else if (
      kept !== undefined &&
      (kept.length > length[1] - length[0] || kept.width > width[1] - width[0])
    ) {
      faults.add('hand-work-wrong', `the piece kept from ${opening} is larger than the opening`);
    }
  }
}

/** What is cut by hand must lie on the panel as it comes off the saw. */
export function checkHandWork(group: PlanGroup, faults: Faults): void {
  for (const panel of group.panels) checkPanel(panel, faults);
}
