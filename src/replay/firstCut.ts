import type { Um } from '../model/geometry.ts';
import type { PlanSheet, PlanStep } from '../model/plan.ts';
import type { Blade, EndPiece, Faults, Piece } from './pieces.ts';

type PartingStep = Exclude<PlanStep, { cut: 'trim' }>;

/** A sheet that has been sawn to the end: `sizes` holds every piece there ever was, by name. */
interface SawnToTheEnd {
  readonly sheet: PlanSheet;
  readonly sizes: ReadonlyMap<string, Piece>;
  readonly ends: readonly EndPiece[];
  readonly kerfUm: Um;
  /** Blade that this saw's rule wants first. */
  readonly wanted: Blade;
}

/**
 * How much could have been taken off a piece with the wanted blade, right along it, without hurting a panel: the
 * least, over all lines square to that blade, of what is not panel.
 */
function spareUm(name: string, sawn: SawnToTheEnd, cuts: ReadonlyMap<string, PartingStep>): Um {
  const step = cuts.get(name);
  if (step === undefined) {
    const piece = sawn.sizes.get(name)!;
    const end = sawn.ends.find((candidate) => candidate.piece.name === name);
    if (end?.is === 'panel') return 0;
    return sawn.wanted === 'length' ? piece.y1 - piece.y0 : piece.x1 - piece.x0;
  }
  const spares = step.gives.map((given) => spareUm(given, sawn, cuts));
  if (step.blade !== sawn.wanted) return Math.min(...spares);
  const scraped = step.gives.length === 1 ? Math.round(step.take * 1000) : 0;
  return spares.reduce((sum, spare) => sum + spare, scraped);
}

/**
 * A saw that has to rip first (or crosscut first) may start the other way only where the first stage would have had
 * nothing to do: the sheet, once trimmed, is no wider than the one strip it is cut into, to within a kerf.
 */
export function checkFirstCut(sawn: SawnToTheEnd, faults: Faults): void {
  const cuts = new Map<string, PartingStep>();
  let first: { step: PartingStep; number: number } | undefined;
  for (const [index, step] of sawn.sheet.steps.entries()) {
    if (step.cut === 'trim') continue;
    cuts.set(step.piece, step);
    first ??= { step, number: index + 1 };
  }
  if (first === undefined || first.step.blade === sawn.wanted) return;
  if (spareUm(first.step.piece, sawn, cuts) <= sawn.kerfUm) return;
  const [wanted, other] = sawn.wanted === 'length' ? ['rip', 'crosscut'] : ['crosscut', 'rip'];
  faults.add('first-cut-wrong', `this saw has to ${wanted} first, and the first cut is a ${other}`, {
    sheet: sawn.sheet.number,
    cut: first.number,
  });
}
