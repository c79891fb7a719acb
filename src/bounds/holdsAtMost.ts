import type { SheetPattern } from '../model/patterns.ts';

/** Whether a pattern holds at most so many of an item; of the others it may hold any number. */
export function holdsAtMost({ counts }: Pick<SheetPattern, 'counts'>, item: number, most: number): boolean {
  return counts.every((counted) => counted.item !== item || counted.count <= most);
}
