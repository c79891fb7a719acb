import {
  type AssemblyStep,
  assemblyOrder,
  type HeldPiece,
  joinedPieces,
} from '../../basics/assemblyOrder.ts';
import type { CountedFitting, PlacedUnit } from '../../model/furniture.ts';
import type { FITTED, Fitting } from '../../model/library.ts';
import type { StepInWords } from '../stepsInWords.ts';
import type { AssemblyWords } from '../words/assemblyWords.ts';
import { panelsInWords } from './panelsInWords.ts';
import { asWritten, type WrittenSteps } from './writtenAssembly.ts';

function stepInWords({ kind, panels, slidesFrom }: AssemblyStep, index: number, says: AssemblyWords): string {
  const list = panelsInWords(panels);
  if (index === 0) return says.begin[kind](list);
  return slidesFrom === null ? says.put[kind](list) : says.slide(list, slidesFrom);
}

/** What fittings hold, in the order in which it is held, neighbours of one sort together. */
function heldInWords(held: readonly HeldPiece[], says: AssemblyWords): string[] {
  const sortOf = ({ panels, isFront }: HeldPiece) =>
    panels.length > 1 ? 'apart' : isFront ? 'front' : 'one';
  const groups: HeldPiece[][] = [];
  for (const piece of held) {
    const last = groups.at(-1);
    if (last !== undefined && sortOf(last[0]!) === sortOf(piece)) last.push(piece);
    else groups.push([piece]);
  }
  return groups.map((group) => {
    const sort = sortOf(group[0]!);
    if (sort === 'apart') return says.apart(group.map(({ panels }) => panelsInWords(panels)));
    const list = panelsInWords(group.flatMap(({ panels }) => panels));
    return sort === 'front' ? says.fronts(list) : says.held(list);
  });
}

/** The carcass with its screws and when to see that it is square, and what is held or laid on once it stands. */
function readFromBoxes(unit: PlacedUnit, says: AssemblyWords, joints: string | null): WrittenSteps {
  const { steps, held } = assemblyOrder(unit);
  const after = heldInWords(held, says);
  if (unit.panels.length === 1) {
    return { toTheBody: [], carcass: steps.map(({ panels }) => says.alone(panelsInWords(panels))), after };
  }
  const closes = steps.findIndex(
    ({ kind, slidesFrom }, index) => index > 0 && (kind === 'back' || kind === 'top' || slidesFrom !== null),
  );
  // Uprights alone are not joined yet.
  const squareAt = (closes > 1 ? closes : steps.length) - 1;
  const hasUprights = steps.flatMap(({ kind, panels }) => (kind === 'upright' ? panels : [])).length > 1;
  const isJoined = (_: AssemblyStep, index: number) =>
    joinedPieces(steps.slice(0, index + 1).flatMap(({ panels }) => panels)).some(({ length }) => length > 1);
  const firstJoin = steps.findIndex(isJoined);
  const carcass = steps.map((step, index) =>
    [
      stepInWords(step, index, says),
      ...(index === Math.max(0, firstJoin) && joints !== null ? [joints] : []),
      ...(index === squareAt && hasUprights ? [says.square] : []),
    ].join(' '),
  );
  return { toTheBody: [], carcass, after };
}

type FittedWhen = (typeof FITTED)[number];

/** How many of a fitting are put on when. A screw whose place the unit says in words is in no joint of panels. */
function whenFitted({ fitting, count, inHoles = 0, where }: CountedFitting, of: Fitting | undefined) {
  const inJoints = of?.screw === undefined ? 0 : where === undefined ? count : inHoles;
  const parts: { when: FittedWhen; count: number }[] = [
    { when: of?.fitted ?? 'in the joints', count: inJoints },
    { when: of?.fitted ?? 'once it stands', count: count - inJoints },
  ];
  return parts.filter((part) => part.count > 0).map((part) => ({ fitting, ...part }));
}

/**
 * How a unit is put together, in numbered sentences that name each of its panels once, with the number that it has in `unit`:
 * the carcass in the order that its file gives or else that of `assemblyOrder`, square before back or top close it, the fittings
 * when they are put on, offered up to the wall where edges are scribed, before any screw to a neighbour, then what fittings hold.
 */
export function assemblySteps(
  unit: PlacedUnit,
  fittings: ReadonlyMap<string, Fitting>,
  says: AssemblyWords,
): StepInWords[] {
  const title = (id: string) => fittings.get(id)?.title ?? id;
  const uses = unit.fittings.flatMap((use) => whenFitted(use, fittings.get(use.fitting)));
  const fitted = (when: FittedWhen) => uses.filter((use) => use.when === when);
  const sayFitted = (these: typeof uses, say: (list: string) => string): string[] => {
    const list = these.map(({ fitting, count }) => `${count}\u00a0× ${title(fitting)}`);
    return list.length === 0 ? [] : [say(list.join(', '))];
  };
  const sentenceOf = (whens: readonly FittedWhen[], say: (list: string) => string): string[] =>
    sayFitted(whens.flatMap(fitted), say);
  const inJoints = fitted('in the joints').map(({ fitting }) => title(fitting));
  const inJointsSaid = inJoints.length === 0 ? null : says.joints(inJoints.join(', '));
  const { toTheBody, carcass, after } =
    unit.assembly === undefined
      ? readFromBoxes(unit, says, inJointsSaid)
      : asWritten(unit, unit.assembly, says, inJointsSaid);
  // What goes into wall or body cannot come last where the rest is put to panels that are there before.
  const isFixedFirst = toTheBody.length > 0;
  const isFixedOnly = isFixedFirst && carcass.length === 0;
  const isScribed = unit.panels.some(({ scribed }) => (scribed ?? []).length > 0);
  // Nothing is screwed to its neighbour before it is cut to the wall.
  const waits = ({ fitting }: { fitting: string }) => isScribed && fittings.get(fitting)?.screw !== undefined;
  const standing = fitted('once it stands');
  const onceItStands = {
    beforeWall: standing.filter((use) => !waits(use)),
    afterWall: standing.filter(waits),
  };
  // What begins at the units beside is in its place from then on.
  const isInPlace = unit.assembly?.[0]?.way === 'to its neighbours';
  const sentences = [
    ...sentenceOf(['first'], says.firstFittings),
    ...toTheBody,
    ...(isFixedFirst ? sentenceOf(isFixedOnly ? ['last', 'once it stands'] : ['last'], says.fittings) : []),
    ...carcass,
    ...(isFixedOnly
      ? []
      : sayFitted([...(isInPlace ? fitted('last') : []), ...onceItStands.beforeWall], says.fittings)),
    ...(isScribed ? [says.wall] : []),
    ...(isFixedOnly ? [] : sayFitted(onceItStands.afterWall, says.fittings)),
    ...after,
    ...(isFixedFirst || isInPlace ? [] : sentenceOf(['last'], says.lastFittings)),
  ];
  return sentences.map((sentence, index) => ({
    number: index + 1,
    sentence,
    pushStick: false,
    outcomes: [],
  }));
}
