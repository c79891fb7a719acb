import type { Fraction } from './fraction.ts';
import { other, type Piece, refuse, type Side } from './pieces.ts';

/** A panel that came off a sheet. */
export interface SawnPanel {
  readonly panel: string;
  readonly piece: Piece;
  readonly lengthAlong: Side;
}

export interface Run {
  readonly name: string;
  readonly follows: Side;
  readonly panels: readonly string[];
}

/**
 * The blanks of one sheet: each must give one run, its panels in their order, a kerf apart, from a piece that was cut
 * for them alone.
 */
export function checkRows(sawn: readonly SawnPanel[], runs: readonly Run[], kerf: Fraction): void {
  const runOf = new Map<string, Run>();
  for (const run of runs) for (const panel of run.panels) runOf.set(panel, run);
  const blanks = new Map<Piece, SawnPanel[]>();
  for (const one of sawn) {
    const run = runOf.get(one.panel);
    if (run === undefined) {
      if (one.piece.parted) refuse(`${one.panel} was parted from a blank and belongs to no row`);
      continue;
    }
    const blank = blankOf(one.piece) ?? refuse(`${one.panel} was not parted from a blank`);
    blanks.set(blank, [...(blanks.get(blank) ?? []), one]);
  }
  for (const [blank, panels] of blanks) checkRow(blank, panels, runOf.get(panels[0]!.panel)!, kerf);
}

/** The piece that the first parting cut was made through. */
function blankOf(piece: Piece): Piece | null {
  if (!piece.parted) return null;
  const line = [...piece.within, piece];
  return line[line.findIndex((one) => one.parted) - 1] ?? null;
}

function checkRow(blank: Piece, panels: readonly SawnPanel[], run: Run, kerf: Fraction): void {
  const lengthAlong = panels[0]!.lengthAlong;
  const row: Side = run.follows === 'length' ? lengthAlong : other(lengthAlong);
  const inOrder = [...panels].sort((a, b) => a.piece.from[row].compare(b.piece.from[row]));
  if (inOrder.map(({ panel }) => panel).join('\n') !== run.panels.join('\n'))
    refuse(`the blank ${blank.name} does not give ${run.name} in order`);
  let next = blank.from[row];
  for (const { panel, piece, lengthAlong: lies } of inOrder) {
    if (lies !== lengthAlong) refuse(`${panel} lies across its row`);
    if (!piece.from[row].equals(next)) refuse(`the grain does not run on to ${panel}`);
    if (!piece.from[other(row)].equals(blank.from[other(row)])) refuse(`${panel} lies beside its row`);
    next = piece.from[row].plus(piece.size[row]).plus(kerf);
  }
}
