import { SeededRandom } from '../basics/random.ts';
import type { ComingOrder, CuttingDay, OrderMix } from '../model/yearOfOrders.ts';

/**
 * When the orders of a mix come and which are cut together. Weeks that are not given are drawn by the seed, each as likely
 * as any other. Cutting is at the end of every so many weeks, and of the last one; a day without orders is left out.
 */
export function scheduleOf({ entries, weeks, cutTogetherWeeks }: OrderMix, seed: number): CuttingDay[] {
  const random = new SeededRandom(seed);
  const coming = entries.flatMap(({ comes }, entry): ComingOrder[] => {
    const drawn =
      'weeks' in comes ? comes.weeks : Array.from({ length: comes.count }, () => 1 + random.below(weeks));
    return drawn.map((week, index) => ({ entry, number: index + 1, week }));
  });
  const days = new Map<number, ComingOrder[]>();
  for (const order of coming) {
    const end = Math.min(weeks, Math.ceil(order.week / cutTogetherWeeks) * cutTogetherWeeks);
    days.set(end, [...(days.get(end) ?? []), order]);
  }
  return [...days]
    .sort(([a], [b]) => a - b)
    .map(([week, orders]) => ({ week, orders: orders.sort((a, b) => a.week - b.week || a.entry - b.entry) }));
}
