import { extentSize, sharedUm } from '../basics/boxes.ts';
import { cutOutBox } from '../basics/joints.ts';
import { printMmShort } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { Extent, Um } from '../model/geometry.ts';
import { panelOfUnit } from './names.ts';
import { applianceFinding, appliancePhrase, type StandingAppliance } from './standingAppliance.ts';

/** The axes of a level board, with the side of the opening that lies along each; both in the unit's frame. */
const SIDES = [
  ['x', 'width'],
  ['y', 'depth'],
] as const;

/**
 * Whether an appliance that hangs by its rim does so: the level board that it goes through must have an opening under
 * it, at least as large as its entry asks for, and covered by the rim all round. One whose entry states no opening is not
 * looked at.
 */
export function wrongOpening(each: StandingAppliance): Finding[] {
  const { openingUm } = each.appliance;
  if (openingUm === undefined) return [];
  const { body, through } = each.held;
  const boards = each.unit.panels.filter(
    ({ id, thicknessAxis }) => through.includes(id) && thicknessAxis === 'z',
  );
  return boards.flatMap((panel): Finding[] => {
    const openings = panel.cutOuts.map((cutOut) => cutOutBox(panel, cutOut));
    const opening = openings.find((one) => SIDES.every(([axis]) => sharedUm(one[axis], body[axis]) > 0));
    const who = appliancePhrase(each);
    const asked = `its entry asks for ${sizeInWords(openingUm.width, openingUm.depth)} mm`;
    const told = (message: string, advice: string) => [
      applianceFinding('appliance-opening', each, message, advice),
    ];
    if (opening === undefined) {
      const message = `${panelOfUnit(panel)} has no opening for ${who}; ${asked}`;
      return told(message, 'give the board a cut-out where the appliance hangs');
    }
    const is = `the opening of ${panelOfUnit(panel)} for ${who} is ${sizeInWords(extentSize(opening.x), extentSize(opening.y))} mm`;
    if (SIDES.some(([axis, side]) => extentSize(opening[axis]) < openingUm[side])) {
      return told(`${is}; ${asked}`, 'make the opening larger, or take a smaller appliance');
    }
    if (SIDES.every(([axis]) => covers(body[axis], opening[axis]))) return [];
    const rim = sizeInWords(extentSize(body.x), extentSize(body.y));
    return told(
      `${is}; its rim of ${rim} mm does not cover it all round`,
      'make the opening smaller, or put the appliance over its middle',
    );
  });
}

/** A rim that ends with the opening holds nothing. */
function covers([from, to]: Extent, [openFrom, openTo]: Extent): boolean {
  return from < openFrom && openTo < to;
}

function sizeInWords(widthUm: Um, depthUm: Um): string {
  return `${printMmShort(widthUm)} × ${printMmShort(depthUm)}`;
}
