import type { WayGroup } from '../model/purchase.ts';

const SUMMED = ['panels', 'sheets', 'offcuts', 'least', 'sheetAreaUm2', 'panelAreaUm2'] as const;

/** What a way to cut takes of all its boards and finishes together. */
export function sumOfBoards(groups: readonly WayGroup[]): Pick<WayGroup, (typeof SUMMED)[number]> {
  const sums = { panels: 0, sheets: 0, offcuts: 0, least: 0, sheetAreaUm2: 0, panelAreaUm2: 0 };
  for (const group of groups) for (const field of SUMMED) sums[field] += group[field];
  return sums;
}
