import type { Um } from '../model/geometry.ts';
import type { SawRules } from '../model/stock.ts';

/** Whether a piece is large enough, either way round, for a place in the rack. */
export function worthKeeping(xUm: Um, yUm: Um, least: SawRules['leastOffcut']): boolean {
  const keep = Math.max(least.lengthUm, least.widthUm);
  const narrow = Math.min(least.lengthUm, least.widthUm);
  return Math.max(xUm, yUm) >= keep && Math.min(xUm, yUm) >= narrow;
}
