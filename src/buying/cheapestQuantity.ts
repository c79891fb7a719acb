import type { Offer, Quantity } from '../model/purchase.ts';

const UM_PER_M = 1_000_000n;

/** The price of a metre or piece when so many units are ordered, and from which number it holds. */
export function priceAt(
  offer: Offer,
  units: number,
): { readonly priceMinor: number; readonly from: number | null } {
  const reached = offer.breaks.filter(({ from }) => from <= units).at(-1);
  return reached === undefined
    ? { priceMinor: offer.priceMinor, from: null }
    : { priceMinor: reached.priceMinor, from: reached.from };
}

/** What so many units cost in whole minor units; metres of edging are rounded once for all of them, half up. */
export function costOf(offer: Offer, units: number): number {
  const { priceMinor } = priceAt(offer, units);
  if (offer.unit === 1) return units * priceMinor;
  const exact = BigInt(units) * BigInt(offer.unit) * BigInt(priceMinor);
  return Number((2n * exact + UM_PER_M) / (2n * UM_PER_M));
}

/** The fewest units in whole packs that are at least so many and no fewer than are sold at a time. */
export function fewestUnits(offer: Offer, units: number): number {
  return Math.ceil(Math.max(units, offer.least) / offer.pack) * offer.pack;
}

/** Units that hold an amount of the item. */
export function unitsFor(offer: Offer, amount: number): number {
  return Math.ceil(amount / offer.unit);
}

/**
 * The cheapest number of units that holds an amount above 0: whole packs, at least what is sold at a time, and more
 * than is needed where a price break makes more of it cheaper; of equal prices the fewest. Between two breaks the price
 * rises with the number, so that only the first number of each break can be cheaper than the fewest that do. Null
 * where the offer has not so many.
 */
export function cheapestQuantity(offer: Offer, amount: number): Quantity | null {
  const fewest = fewestUnits(offer, unitsFor(offer, amount));
  const candidates = [fewest, ...offer.breaks.map(({ from }) => fewestUnits(offer, Math.max(from, fewest)))];
  const possible = candidates.filter((units) => offer.most === null || units <= offer.most);
  const first = possible[0];
  if (first === undefined) return null;
  const units = possible.reduce((best, each) => {
    const less = costOf(offer, each) - costOf(offer, best);
    return less < 0 || (less === 0 && each < best) ? each : best;
  }, first);
  const { priceMinor, from } = priceAt(offer, units);
  const cost = costOf(offer, units);
  return {
    offer,
    units,
    packs: units / offer.pack,
    priceEachMinor: priceMinor,
    priceMinor: cost,
    breakFrom: from,
    beyond: units - fewest,
    savedMinor: costOf(offer, fewest) - cost,
  };
}

/** What a pack or a count leaves of an offer that has not enough: as many whole packs as there are. */
function allThereIs(offer: Offer): Quantity | null {
  const units = Math.floor((offer.most ?? 0) / offer.pack) * offer.pack;
  if (units < offer.least || units === 0) return null;
  return cheapestQuantity(offer, units * offer.unit);
}

/**
 * The cheapest offer that has an amount; where none has it alone, all that the cheapest has, then of the next, until
 * it is enough. `missing` is what nobody has.
 */
export function cheapestOffers(
  offers: readonly Offer[],
  amount: number,
): { readonly quantities: readonly Quantity[]; readonly missing: number } {
  if (amount <= 0) return { quantities: [], missing: 0 };
  const quantities: Quantity[] = [];
  let left = amount;
  let rest = [...offers];
  while (left > 0 && rest.length > 0) {
    const whole = rest.flatMap((offer) => cheapestQuantity(offer, left) ?? []);
    if (whole.length > 0) {
      quantities.push(whole.reduce((best, each) => (each.priceMinor < best.priceMinor ? each : best)));
      return { quantities, missing: 0 };
    }
    // Nobody has all of it: the one with the lowest price for as much as there is of it goes first.
    const parts = rest.flatMap((offer) => allThereIs(offer) ?? []);
    const perUnit = (part: Quantity) => part.priceMinor / (part.units * part.offer.unit);
    const [first] = parts.sort((a, b) => perUnit(a) - perUnit(b));
    if (first === undefined) break;
    quantities.push(first);
    left -= first.units * first.offer.unit;
    rest = rest.filter((offer) => offer !== first.offer);
  }
  return { quantities, missing: Math.max(0, left) };
}
