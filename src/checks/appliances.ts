import { axes, inVehicle, sharedBox } from '../basics/boxes.ts';
import { printMmShort } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { Furniture, Panel } from '../model/furniture.ts';
import type { Axis, Box, Um } from '../model/geometry.ts';
import { APPLIANCE_SIDES, type ApplianceSide, type Library, type Vehicle } from '../model/library.ts';
import { doorInTheWay } from './applianceDoor.ts';
import { wrongOpening } from './applianceOpening.ts';
import { mm, panelOfUnit } from './names.ts';
import {
  applianceFinding,
  appliancePhrase,
  type StandingAppliance,
  wallsAround,
} from './standingAppliance.ts';

const WHERE: Readonly<Record<ApplianceSide, string>> = {
  left: 'to the left of',
  right: 'to the right of',
  front: 'in front of',
  back: 'behind',
  above: 'above',
  below: 'below',
};

const AXIS: Readonly<Record<ApplianceSide, { readonly axis: Axis; readonly high: boolean }>> = {
  left: { axis: 'x', high: false },
  right: { axis: 'x', high: true },
  front: { axis: 'y', high: false },
  back: { axis: 'y', high: true },
  below: { axis: 'z', high: false },
  above: { axis: 'z', high: true },
};

/**
 * Whether each appliance has the room that its own entry asks for: no board in its body; what must stay clear on each side,
 * free of boards of all units, of the walls and of other appliances; openings large enough for its air, and one that its body
 * goes through and its rim covers where it hangs in a board; and a door that opens. Straight out from its body: corners are
 * not looked at. Without a vehicle the walls are not either.
 */
export function checkAppliances(
  furniture: Furniture,
  vehicle: Vehicle | undefined,
  library: Pick<Library, 'appliances'>,
): Finding[] {
  const standing = furniture.units.flatMap((unit) =>
    (unit.appliances ?? []).flatMap((held): StandingAppliance[] => {
      const appliance = library.appliances?.get(held.appliance);
      return appliance === undefined ? [] : [{ unit, held, appliance, body: inVehicle(held.body, unit) }];
    }),
  );
  const panels = furniture.units.flatMap((unit) => unit.panels);
  return standing.flatMap((each) => [
    ...inTheBody(each, panels, vehicle),
    ...APPLIANCE_SIDES.flatMap((side) => tooNear(each, side, panels, standing, vehicle)),
    ...airTooNarrow(each),
    ...wrongOpening(each),
    ...doorInTheWay(each, panels, vehicle),
  ]);
}

function inTheBody(
  each: StandingAppliance,
  panels: readonly Panel[],
  vehicle: Vehicle | undefined,
): Finding[] {
  const solid = [
    ...panels
      .filter((panel) => !each.held.through.includes(panel.id))
      .map((panel) => ({ what: panelOfUnit(panel), box: panel.placeBox })),
    ...(vehicle === undefined ? [] : wallsAround(each.body, vehicle)),
  ];
  const hit = solid.find(({ box }) => sharedBox(each.body, box) !== null);
  if (hit === undefined) return [];
  const message = `${hit.what} stands in the body of ${appliancePhrase(each)}`;
  return [
    applianceFinding('appliance-clash', each, message, 'make room for it, or take a smaller appliance'),
  ];
}

/** What lies straight out from one side of the body, as far as its entry asks, in the vehicle's frame. */
function clearBox({ held, unit, appliance }: StandingAppliance, side: ApplianceSide): Box {
  const { axis, high } = AXIS[side];
  const [from, to] = held.body[axis];
  const um = appliance.clearUm[side];
  return inVehicle({ ...held.body, [axis]: high ? [to, to + um] : [from - um, from] }, unit);
}

/** How far a box lies from the body, straight out into the box that must stay clear. */
function gapUm(body: Box, clear: Box, other: Box): Um {
  const axis = axes.find((each) => clear[each][0] >= body[each][1] || clear[each][1] <= body[each][0])!;
  return clear[axis][0] >= body[axis][1] ? other[axis][0] - body[axis][1] : body[axis][0] - other[axis][1];
}

function tooNear(
  each: StandingAppliance,
  side: ApplianceSide,
  panels: readonly Panel[],
  standing: readonly StandingAppliance[],
  vehicle: Vehicle | undefined,
): Finding[] {
  const wantedUm = each.appliance.clearUm[side];
  if (wantedUm === 0) return [];
  const clear = clearBox(each, side);
  const near = [
    ...panels
      .filter((panel) => !each.held.through.includes(panel.id))
      .map((panel) => ({ what: panelOfUnit(panel), box: panel.placeBox })),
    ...standing
      .filter((other) => other !== each)
      .map((other) => ({ what: appliancePhrase(other), box: other.body })),
    ...(vehicle === undefined ? [] : wallsAround(each.body, vehicle)),
  ].flatMap(({ what, box }) => {
    if (sharedBox(clear, box) === null) return [];
    const um = gapUm(each.body, clear, box);
    // What stands in the body itself is told by itself.
    return um < 0 ? [] : [{ what, um }];
  });
  if (near.length === 0) return [];
  const { what, um } = near.reduce((a, b) => (b.um < a.um ? b : a));
  const message = `${what} stands ${mm(um)} ${WHERE[side]} ${appliancePhrase(each)}; its entry asks for ${printMmShort(wantedUm)} mm`;
  const advice = 'move one of them, or take an appliance that asks for less';
  return [applianceFinding('appliance-too-near', each, message, advice)];
}

/** The air passes its openings one after the other, so the smallest counts; openings of one panel count together. */
function airTooNarrow(each: StandingAppliance): Finding[] {
  return (['in', 'out'] as const).flatMap((way) => {
    const wanted = each.appliance.airCm2[way];
    if (wanted === 0) return [];
    const areas = each.held.air[way].map(({ panels, cutOut }) =>
      each.unit.panels
        .filter((panel) => panels.includes(panel.id))
        .flatMap((panel) => panel.cutOuts)
        .filter(({ name }) => name === cutOut)
        .reduce((sum, { alongLength: l, alongWidth: w }) => sum + ((l[1] - l[0]) * (w[1] - w[0])) / 1e8, 0),
    );
    const least = areas.length === 0 ? 0 : Math.min(...areas);
    if (least >= wanted) return [];
    const what = way === 'in' ? 'air that goes in' : 'air that comes out';
    const message = `openings of ${least.toFixed(0)} cm² are left for the ${what} of ${appliancePhrase(each)}; its entry asks for ${wanted} cm²`;
    const advice = `give the ${each.unit.name} larger openings, and name them under \`air ${way}\``;
    return [applianceFinding('appliance-air', each, message, advice)];
  });
}
