import type { PlanGroup } from '../model/plan.ts';
import type { CutGuide } from '../model/stock.ts';

/** What guides the cuts of a group of a plan; a plan that does not say so was made for a fence. */
export function guideOf({ saw }: Pick<PlanGroup, 'saw'>): CutGuide {
  return saw.guidedBy ?? 'fence';
}

/** What guides the cuts of a whole plan, each guide once, a fence first; one of a plan without groups is not known. */
export function guidesOf(groups: readonly Pick<PlanGroup, 'saw'>[]): CutGuide[] {
  const used = new Set(groups.map(guideOf));
  return (['fence', 'rail'] as const).filter((guide) => used.has(guide));
}
