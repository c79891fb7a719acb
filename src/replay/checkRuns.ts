import type { PlanGroup, PlanSheet } from '../model/plan.ts';
import { type EndPiece, type Faults, mm, toUm } from './pieces.ts';
import type { SawnSheet } from './sawSheet.ts';

type Run = PlanGroup['runs'][number];

/** Along which side of the sheet a run goes when the panels' length lies along `lengthAlong`. */
function goesAlong(run: Run, lengthAlong: EndPiece['lengthAlong']): 'x' | 'y' {
  return (run.follows === 'length') === (lengthAlong === 'length') ? 'x' : 'y';
}

function checkSpacing(fronts: readonly EndPiece[], axis: 'x' | 'y', kerfUm: number): string | null {
  for (let i = 1; i < fronts.length; i++) {
    const before = fronts[i - 1]!.piece;
    const piece = fronts[i]!.piece;
    const gapUm = axis === 'x' ? piece.x0 - before.x1 : piece.y0 - before.y1;
    const level = axis === 'x' ? piece.y0 === before.y0 : piece.x0 === before.x0;
    if (gapUm !== kerfUm || !level) {
      return `"${before.name}" and "${piece.name}" do not lie side by side one kerf apart, but ${mm(gapUm)}`;
    }
  }
  return null;
}

/** The fronts of one blank: one run, whole, in its order, side by side along the way the run goes. */
function faultOfBlank(
  fronts: readonly EndPiece[],
  runOf: ReadonlyMap<string, Run>,
  kerfUm: number,
): string | null {
  const run = fronts[0] && runOf.get(fronts[0].panel);
  if (run === undefined) return 'a piece is parted that is no blank of matched panels';
  const axis = goesAlong(run, fronts[0]!.lengthAlong);
  const inPlace = [...fronts].sort((a, b) =>
    axis === 'x' ? a.piece.x0 - b.piece.x0 : a.piece.y0 - b.piece.y0,
  );
  const found = inPlace.map((front) => front.panel);
  if (found.length !== run.panels.length || found.some((panel, i) => panel !== run.panels[i])) {
    return `run "${run.name}" must be ${run.panels.join(', ')} in this order, but the blank gives ${found.join(', ')}`;
  }
  if (inPlace.some((front) => front.lengthAlong !== fronts[0]!.lengthAlong)) {
    return `the panels of run "${run.name}" do not all lie the same way`;
  }
  return checkSpacing(inPlace, axis, kerfUm);
}

/** Panels by id to the run they belong to; a panel in two runs is a fault, and so is one that is not listed. */
export function runsByPanel(group: PlanGroup, faults: Faults): Map<string, Run> {
  const listed = new Set(group.panels.map((panel) => panel.id));
  const runOf = new Map<string, Run>();
  for (const run of group.runs) {
    for (const panel of run.panels) {
      if (!listed.has(panel))
        faults.add('run-wrong', `run "${run.name}" names a panel "${panel}" that is not listed`);
      if (runOf.has(panel)) faults.add('run-wrong', `panel "${panel}" stands twice in a run`);
      runOf.set(panel, run);
    }
  }
  return runOf;
}

/** Every panel of a run comes from a blank that gives the whole run in order, and only such blanks are parted. */
export function checkRuns(
  group: PlanGroup,
  sheet: PlanSheet,
  sawn: SawnSheet,
  runOf: ReadonlyMap<string, Run>,
  faults: Faults,
): void {
  const kerfUm = toUm(group.saw.kerf);
  const panels = sawn.ends.filter((end) => end.is === 'panel');
  for (const [number, blank] of sawn.blanks.entries()) {
    const wrong = faultOfBlank(
      panels.filter((end) => end.piece.blank === number),
      runOf,
      kerfUm,
    );
    if (wrong !== null) faults.add('run-wrong', wrong, { sheet: sheet.number, cut: blank.step });
  }
  for (const end of panels) {
    const run = end.piece.blank === null ? runOf.get(end.panel) : undefined;
    if (run !== undefined) {
      const text = `panel "${end.panel}" (piece "${end.piece.name}") is not parted from a blank of run "${run.name}"`;
      faults.add('run-wrong', text, { sheet: sheet.number });
    }
  }
}
