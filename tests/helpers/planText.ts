import type { Nest, NestedSheet, NestPiece } from '../../src/model/nest.ts';
import type { PlanStep } from '../../src/model/plan.ts';
import type { StockGroup } from '../../src/model/stock.ts';

/** Nest pieces in mm, for examples worked by hand. */
export function stack(axis: 'x' | 'y', xMm: number, yMm: number, children: readonly NestPiece[]): NestPiece {
  return { kind: 'stack', axis, xUm: um(xMm), yUm: um(yMm), children };
}

export function wanted(demand: number, xMm: number, yMm: number, lengthAlong: 'x' | 'y' = 'x'): NestPiece {
  return { kind: 'demand', xUm: um(xMm), yUm: um(yMm), demand, lengthAlong };
}

export function spare(xMm: number, yMm: number, use: 'offcut' | 'waste' = 'waste'): NestPiece {
  return { kind: 'spare', xUm: um(xMm), yUm: um(yMm), use };
}

/** A nest of the group without a bound worth the name. */
export function nestOf(group: StockGroup, sheets: readonly NestedSheet[]): Nest {
  const costMinor = sheets.reduce((sum, s) => sum + s.copies * group.sheets[s.sheet]!.priceMinor, 0);
  return {
    sheets,
    costMinor,
    bound: { sheets: 0, costMinor: 0, certificate: { method: 'area' } },
    proved: false,
    moves: 0,
  };
}

function um(mm: number): number {
  return Math.round(mm * 1000);
}

/** A step on one short line: `rip sheet 4 at 600 → A + B+`. */
export function stepLine(step: PlanStep): string {
  if (step.cut === 'trim') return `trim ${step.piece} ${step.side} ${step.take} → ${step.leaves}`;
  const scraped = step.gives.length === 1 ? ` (scrapes ${step.take})` : '';
  return `${step.cut} ${step.piece} at ${step.fence} → ${step.gives.join(' + ')}${scraped}`;
}
