import type { ChangeLimit } from '../model/advice.ts';

/** A number of pieces more or less weighs as much as so many mm: a shelf is no small change. */
const MM_A_COUNT = 1000;

/** Values of one number of an order, by place in its limit's `values`, all on one side of what it is now. */
interface Side {
  /** Index of the limit. */
  readonly limit: number;
  readonly from: number;
  readonly to: number;
}

/** Combinations of values of one or two numbers; all others stay as they are. */
export type ChangeBox = readonly Side[];

/** What a value of each limit is, `now` where it is not changed. */
export type ChangeValues = readonly number[];

function sidesOf({ values, now }: ChangeLimit, limit: number): Side[] {
  const below = values.filter((value) => value < now).length;
  return [
    { limit, from: 0, to: below - 1 },
    { limit, from: below, to: values.length - 1 },
  ].filter(({ from, to }) => from <= to);
}

/** Every change of one number, and of two at once: a box for each side of what they are now. */
export function startBoxes(limits: readonly ChangeLimit[]): ChangeBox[] {
  const sides = limits.map(sidesOf);
  const singles = sides.flat().map((side) => [side]);
  const pairs = sides.flatMap((first, index) =>
    sides.slice(index + 1).flatMap((second) => first.flatMap((a) => second.map((b) => [a, b]))),
  );
  return [...singles, ...pairs];
}

/** How far some values are from what is now: mm together, a count weighing as much as a metre. */
export function sizeOfChange(limits: readonly ChangeLimit[], values: ChangeValues): number {
  return limits.reduce(
    (sum, { kind, now }, index) => sum + Math.abs(values[index]! - now) * (kind === 'count' ? MM_A_COUNT : 1),
    0,
  );
}

function withValues(
  limits: readonly ChangeLimit[],
  box: ChangeBox,
  pick: (side: Side, limit: ChangeLimit) => number,
): ChangeValues {
  return limits.map((limit, index) => {
    const side = box.find((each) => each.limit === index);
    return side === undefined ? limit.now : limit.values[pick(side, limit)]!;
  });
}

/** The values of a box that are nearest to what is now. */
export function nearestValues(limits: readonly ChangeLimit[], box: ChangeBox): ChangeValues {
  return withValues(limits, box, ({ from, to }, { values, now }) => (values[from]! < now ? to : from));
}

/** The values of a box after so many steps, of as many as its longest side has, from the nearest ones to the farthest. */
export function valuesTowards(limits: readonly ChangeLimit[], box: ChangeBox, step: number): ChangeValues {
  const steps = stepsOf(box);
  return withValues(limits, box, ({ from, to }, { values, now }) => {
    const along = steps === 0 ? 0 : Math.round(((to - from) * step) / steps);
    return values[from]! < now ? to - along : from + along;
  });
}

/** How many steps there are from the nearest values of a box to the farthest. */
export function stepsOf(box: ChangeBox): number {
  return Math.max(...box.map(({ from, to }) => to - from));
}

export function isSingle(box: ChangeBox): boolean {
  return box.every(({ from, to }) => from === to);
}

/** The values at every corner of a box, each once. */
export function cornersOf(limits: readonly ChangeLimit[], box: ChangeBox): ChangeValues[] {
  let corners: ((side: Side) => number)[] = [() => 0];
  for (const { limit, from, to } of box) {
    const ends = from === to ? [from] : [from, to];
    corners = corners.flatMap((pick) =>
      ends.map((end) => (side: Side) => (side.limit === limit ? end : pick(side))),
    );
  }
  return corners.map((pick) => withValues(limits, box, pick));
}

/** Both halves of a box, parted where it has most values. */
export function halvesOf(box: ChangeBox): readonly [ChangeBox, ChangeBox] {
  const length = ({ from, to }: Side) => to - from;
  const widest = box.reduce((best, side) => (length(side) > length(best) ? side : best));
  const middle = Math.floor((widest.from + widest.to) / 2);
  const part = (from: number, to: number) =>
    box.map((side) => (side === widest ? { ...side, from, to } : side));
  return [part(widest.from, middle), part(middle + 1, widest.to)];
}
