import type { ChangeLimit } from '../model/advice.ts';
import { type ChangeBox, type ChangeValues, sizeOfChange, stepsOf, valuesTowards } from './boxes.ts';

/** How a change further away is looked for. */
export interface FarSearch<Found> {
  /** Changes smaller than this were looked at. */
  readonly lookedUpTo: number;
  /** Null where nothing is saved. */
  readonly tryAt: (values: ChangeValues) => Found | null;
  /** True ends the search. */
  readonly isOver: () => boolean;
}

/**
 * A change that saves within a box, further away than a search from near to far has come: looked for on the way from the
 * nearest values of the box to its farthest, at distances that double, and then between the one that saves and the last that
 * did not. That is the nearest on this way where saving begins somewhere and does not end again. Null where none was found.
 */
export function farChange<Found>(
  limits: readonly ChangeLimit[],
  box: ChangeBox,
  { lookedUpTo, tryAt, isOver }: FarSearch<Found>,
): Found | null {
  const all = stepsOf(box);
  const at = (step: number) => valuesTowards(limits, box, step);
  let first = 0;
  while (first <= all && sizeOfChange(limits, at(first)) < lookedUpTo) first++;
  let useless = first - 1;
  let saving: { readonly step: number; readonly found: Found } | null = null;
  const look = (step: number) => {
    const found = tryAt(at(step));
    if (found === null) useless = step;
    else saving = { step, found };
    return found !== null;
  };
  for (let far = 0; useless < all && !isOver(); far = 2 * far + 1) {
    if (look(Math.min(all, first + far))) break;
  }
  const savingStep = () => saving?.step ?? useless;
  while (savingStep() - useless > 1 && !isOver()) look(Math.floor((useless + savingStep()) / 2));
  return (saving as { readonly found: Found } | null)?.found ?? null;
}
