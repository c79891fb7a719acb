import type { Finding } from '../model/finding.ts';
import type { Part } from '../model/part.ts';
import type { Demand, StockSheet } from '../model/stock.ts';
import { findRuns } from './findRuns.ts';

/** A part that may be turned is held with its longer side as its length, so that equal sizes meet. */
function sizeOf(part: Part): { lengthUm: number; widthUm: number; grain: 'length' | 'none' } {
  const { cutLengthUm: lengthUm, cutWidthUm: widthUm, grain } = part;
  if (grain === 'none' && lengthUm < widthUm) return { lengthUm: widthUm, widthUm: lengthUm, grain };
  return { lengthUm, widthUm, grain };
}

function mergeEqualSizes(parts: readonly Part[]): Demand[] {
  const bySize = new Map<string, Part[]>();
  for (const part of parts) {
    const { lengthUm, widthUm, grain } = sizeOf(part);
    const key = `${lengthUm} ${widthUm} ${grain}`;
    const same = bySize.get(key);
    if (same) same.push(part);
    else bySize.set(key, [part]);
  }
  return [...bySize.values()].map((same) => ({
    ...sizeOf(same[0]!),
    count: same.reduce((sum, part) => sum + part.count, 0),
    parts: same.map((part) => ({ part: part.id, count: part.count })),
  }));
}

/**
 * Parts → demands: matched rows first, each a blank, then single parts merged by size and grain in the order in which
 * they first come. Every part stands in exactly one demand with its whole count.
 */
export function makeDemands(
  parts: readonly Part[],
  sheets: readonly StockSheet[],
  kerfUm: number,
): { readonly demands: Demand[]; readonly findings: Finding[] } {
  const { blanks, findings } = findRuns(parts, sheets, kerfUm);
  const matched = new Set(blanks.flatMap((blank) => blank.parts.map((entry) => entry.part)));
  return {
    demands: [...blanks, ...mergeEqualSizes(parts.filter((part) => !matched.has(part.id)))],
    findings,
  };
}
