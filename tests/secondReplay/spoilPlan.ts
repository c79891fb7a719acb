import type { SeededRandom } from '../../src/basics/random.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** A plan file with one thing changed, and what that was. */
export interface SpoiltPlan {
  readonly text: string;
  readonly what: string;
}

/** A value inside the plan: what holds it and under which key or index. */
interface Spot {
  readonly holder: Json[] | { [key: string]: Json };
  readonly key: string | number;
  readonly path: string;
}

/** Changes one number, one name, one entry of a list or one key of the plan, drawn with `random`. */
export function spoilPlan(text: string, random: SeededRandom): SpoiltPlan {
  const plan = JSON.parse(text) as Json;
  const spots: Spot[] = [];
  collect(plan, '', spots);
  const pick = <T>(all: readonly T[]): T => all[random.below(all.length)]!;
  const spot = random.below(3) === 0 ? pick(spots) : descend(plan, random);
  const value = (spot.holder as Record<string | number, Json>)[spot.key]!;
  const put = (changed: Json, how: string): SpoiltPlan => {
    (spot.holder as Record<string | number, Json>)[spot.key] = changed;
    return { text: JSON.stringify(plan), what: `${spot.path} ${how}` };
  };
  const values = spots.map(({ holder, key }) => (holder as Record<string | number, Json>)[key]!);
  if (typeof value === 'number' && random.below(6) > 0) {
    const numbers = values.filter((one) => typeof one === 'number');
    const changed = pick([
      value + 0.001,
      value - 0.001,
      value + 0.1,
      value + 1,
      value - 1,
      value * 2,
      0,
      pick(numbers),
    ]);
    const rounded = Math.round(changed * 1000) / 1000;
    return put(rounded, `${value} → ${rounded}`);
  }
  if (typeof value === 'string' && random.below(6) > 0) {
    const same = sameKey(spots, spot.key).filter((one) => typeof one === 'string');
    const changed = pick([
      `${value} `,
      pick(same),
      pick(same),
      pick(values.filter((one) => typeof one === 'string')),
    ]);
    return put(changed, `${value} → ${changed}`);
  }
  if (typeof value === 'boolean') return put(!value, 'the other way');
  const { holder } = spot;
  if (!Array.isArray(holder)) {
    delete holder[String(spot.key)];
    return { text: JSON.stringify(plan), what: `${spot.path} left out` };
  }
  const index = Number(spot.key);
  switch (random.below(3)) {
    case 0:
      holder.splice(index, 1);
      return { text: JSON.stringify(plan), what: `${spot.path} dropped` };
    case 1: {
      const to = random.below(2) === 0 ? Math.min(index + 1, holder.length - 1) : random.below(holder.length);
      [holder[index], holder[to]] = [holder[to]!, holder[index]!];
      return { text: JSON.stringify(plan), what: `${spot.path} swapped with ${to}` };
    }
    default:
      holder.splice(index, 0, structuredClone(holder[index]!));
      return { text: JSON.stringify(plan), what: `${spot.path} doubled` };
  }
}

/** Certificates are left out: the second replay does not check them again. */
function collect(value: Json, path: string, spots: Spot[]): void {
  for (const [key, inside] of children(value)) {
    const at = `${path}/${key}`;
    spots.push({ holder: value as Spot['holder'], key, path: at });
    collect(inside, at, spots);
  }
}

function children(value: Json): [string | number, Json][] {
  if (Array.isArray(value)) return [...value.entries()];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).filter(([key]) => key !== 'certificate');
}

/** A way down, every turn as likely as the next, so that what there is little of is found as well. */
function descend(plan: Json, random: SeededRandom): Spot {
  let value = plan;
  let spot = null as Spot | null;
  for (;;) {
    const inside = children(value);
    if (inside.length === 0 || (spot !== null && random.below(12) === 0)) return spot!;
    const [key, next] = inside[random.below(inside.length)]!;
    spot = { holder: value as Spot['holder'], key, path: `${spot?.path ?? ''}/${key}` };
    value = next;
  }
}

function sameKey(spots: readonly Spot[], key: string | number): Json[] {
  return spots
    .filter((spot) => spot.key === key)
    .map((spot) => (spot.holder as Record<string | number, Json>)[spot.key]!);
}
