import type { OrderMix, RackedOffcut } from '../model/yearOfOrders.ts';

function areaOf({ supply: { lengthUm, widthUm } }: RackedOffcut): number {
  return lengthUm * widthUm;
}

/** The offcuts that are still in the rack in a week: none too old and, where there is room for so many only, the largest. */
export function keptInRack(
  rack: readonly RackedOffcut[],
  week: number,
  { keepWeeks, mostOffcuts }: Pick<OrderMix, 'keepWeeks' | 'mostOffcuts'>,
): RackedOffcut[] {
  const young = rack.filter((each) => keepWeeks === null || week - each.week <= keepWeeks);
  if (mostOffcuts === null || young.length <= mostOffcuts) return young;
  const largest = [...young].sort((a, b) => areaOf(b) - areaOf(a) || b.week - a.week).slice(0, mostOffcuts);
  return young.filter((each) => largest.includes(each));
}

/** Area of all offcuts of a rack. */
export function rackAreaUm2(rack: readonly RackedOffcut[]): bigint {
  return rack.reduce(
    (sum, { supply: { lengthUm, widthUm } }) => sum + BigInt(lengthUm) * BigInt(widthUm),
    0n,
  );
}
