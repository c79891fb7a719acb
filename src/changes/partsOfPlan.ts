import { mmToUm } from '../basics/lengths.ts';
import type { HandWork, MatchPlace, Part } from '../model/part.ts';
import type { PlanGroup, PlanPanel } from '../model/plan.ts';

function handWork({ outline, openings }: NonNullable<PlanPanel['byHand']>): HandWork {
  const um = ([from, to]: readonly [number, number]) => [mmToUm(from), mmToUm(to)] as const;
  return {
    ...(outline === undefined
      ? {}
      : {
          outline: outline.map(([length, width]) => ({
            alongLengthUm: mmToUm(length),
            alongWidthUm: mmToUm(width),
          })),
        }),
    openings: openings.map(({ name, length, width, kept }) => ({
      name,
      alongLength: um(length),
      alongWidth: um(width),
      ...(kept === undefined ? {} : { kept: { lengthUm: mmToUm(kept.length), widthUm: mmToUm(kept.width) } }),
    })),
  };
}

/** Places in rows over which the grain runs on, by id of the panel. */
function placesInRows({ runs }: Pick<PlanGroup, 'runs'>): Map<string, MatchPlace> {
  return new Map(
    runs.flatMap(({ name, follows, panels }) =>
      panels.map((panel, position) => [panel, { run: name, position, follows }] as const),
    ),
  );
}

/** A panel of a plan as the part it was made from, as far as the plan says; its holes are not known. */
export function partOfPlan(
  panel: PlanPanel,
  { board, finish, thickness }: Pick<PlanGroup, 'board' | 'finish' | 'thickness'>,
  match?: MatchPlace,
): Part {
  return {
    id: panel.id,
    name: panel.name,
    unit: panel.unit,
    order: panel.order,
    board,
    finish,
    thicknessUm: mmToUm(thickness),
    finishedLengthUm: mmToUm(panel.finishedLength),
    finishedWidthUm: mmToUm(panel.finishedWidth),
    cutLengthUm: mmToUm(panel.length),
    cutWidthUm: mmToUm(panel.width),
    grain: panel.grain,
    edging: panel.edging,
    count: panel.count,
    ...(match === undefined ? {} : { match }),
    ...(panel.byHand === undefined ? {} : { byHand: handWork(panel.byHand) }),
  };
}

/** The panels of a group of a plan as parts, in their order, with their places in rows of matched fronts. */
export function partsOfGroup(group: PlanGroup): Part[] {
  const places = placesInRows(group);
  return group.panels.map((panel) => partOfPlan(panel, group, places.get(panel.id)));
}
