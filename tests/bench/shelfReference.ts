import ShelfPack from '@mapbox/shelf-pack';
import type { BenchmarkInstance } from './instances.ts';

/**
 * Sheets that a general-purpose shelf packer needs (largest height first, each piece on the first sheet that takes it,
 * nothing turned): what a program gets that has no nester of its own. Null for several sizes of sheet.
 */
export function shelfSheets(instance: BenchmarkInstance): number | null {
  const [sheet, ...others] = instance.sheets;
  const total = instance.items.reduce((sum, [, , count]) => sum + count, 0);
  if (!sheet || others.length > 0 || total > 5000) return null;
  const pieces = instance.items
    .flatMap(([w, h, count]) => Array.from({ length: count }, () => ({ w, h })))
    .sort((a, b) => b.h - a.h || b.w - a.w);
  const packs: ShelfPack[] = [];
  for (const { w, h } of pieces) {
    if (packs.some((pack) => pack.packOne(w, h))) continue;
    const pack = new ShelfPack(sheet.w, sheet.h);
    if (!pack.packOne(w, h)) return null;
    packs.push(pack);
  }
  return packs.length;
}
