import { worthKeeping } from '../basics/worthKeeping.ts';
import type { Um } from '../model/geometry.ts';
import type { NestPiece } from '../model/nest.ts';
import type { SawRules } from '../model/stock.ts';

type Axis = 'x' | 'y';

/** A nest as it will be sawn: every stack really needs its cuts, and its children stand in the order of the cuts. */
export type Arranged =
  | { readonly kind: 'stack'; readonly axis: Axis; xUm: Um; yUm: Um; children: Arranged[] }
  | {
      readonly kind: 'demand';
      readonly xUm: Um;
      readonly yUm: Um;
      readonly demand: number;
      readonly lengthAlong: Axis;
    }
  | { readonly kind: 'spare'; readonly xUm: Um; readonly yUm: Um; readonly use: 'offcut' | 'waste' };

export function sizeAlong(piece: { readonly xUm: Um; readonly yUm: Um }, axis: Axis): Um {
  return axis === 'x' ? piece.xUm : piece.yUm;
}

/**
 * One spare of what several spares of a stack and the dust beyond the last piece leave when no cut is spent on
 * dividing them.
 */
function mergeSpares(
  spares: readonly (Arranged & { kind: 'spare' })[],
  axis: Axis,
  across: Um,
  along: Um,
  saw: SawRules,
): Arranged {
  const xUm = axis === 'x' ? along : across;
  const yUm = axis === 'x' ? across : along;
  const unchanged = spares.length === 1 && sizeAlong(spares[0]!, axis) === along;
  if (unchanged) return spares[0]!;
  const keep = spares.some((spare) => spare.use === 'offcut') || worthKeeping(xUm, yUm, saw.leastOffcut);
  return { kind: 'spare', xUm, yUm, use: keep ? 'offcut' : 'waste' };
}

function checkStack(piece: NestPiece & { kind: 'stack' }, kerfUm: Um): void {
  const across = piece.axis === 'x' ? 'y' : 'x';
  const sum = piece.children.reduce((total, child) => total + sizeAlong(child, piece.axis), 0);
  const left = sizeAlong(piece, piece.axis) - sum - kerfUm * (piece.children.length - 1);
  const straight = piece.children.every((child) => sizeAlong(child, across) === sizeAlong(piece, across));
  if (left < 0 || left > kerfUm || !straight) {
    throw new Error(`a nest cannot be sawn: its stack does not hold its pieces: ${JSON.stringify(piece)}`);
  }
}

/** A stack that fills its place exactly inside a stack along the same axis is no stage of its own. */
function unfold(child: Arranged, axis: Axis, kerfUm: Um): Arranged[] {
  if (child.kind !== 'stack' || child.axis !== axis) return [child];
  const sum = child.children.reduce((total, inner) => total + sizeAlong(inner, axis), 0);
  const exact = sum + kerfUm * (child.children.length - 1) === sizeAlong(child, axis);
  return exact ? child.children : [child];
}

function compareTexts(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/** How a piece is cut up, whatever its panels are: the same for all that can lie on each other on the saw. */
function cutsOf(piece: Arranged): string {
  const size = `${piece.xUm} ${piece.yUm}`;
  return piece.kind === 'stack' ? `${size} (${piece.axis} ${piece.children.map(cutsOf).join(', ')})` : size;
}

/**
 * Puts a nest in the order of sawing, larger pieces first so that the heavy sheet is divided early and equal settings
 * meet, and what is spare last so that it needs no cut of its own. Strips of one size are ordered by how they are cut
 * and then by what is in them, so that alike ones stand together and sheets that are cut alike get the same cuts.
 * Spares side by side become one. Throws when the pieces of a stack do not add up to it.
 */
export function arrange(piece: NestPiece, saw: SawRules): Arranged {
  if (piece.kind !== 'stack') return piece;
  checkStack(piece, saw.kerfUm);
  const { axis, xUm, yUm } = piece;
  const children = piece.children.flatMap((child) => unfold(arrange(child, saw), axis, saw.kerfUm));
  const wanted: Arranged[] = children.filter((child) => child.kind !== 'spare');
  const spares = children.filter((child) => child.kind === 'spare');
  const forms = new Map(wanted.map((child) => [child, { cuts: cutsOf(child), all: JSON.stringify(child) }]));
  wanted.sort((a, b) => {
    const [ofA, ofB] = [forms.get(a)!, forms.get(b)!];
    return (
      sizeAlong(b, axis) - sizeAlong(a, axis) ||
      compareTexts(ofA.cuts, ofB.cuts) ||
      compareTexts(ofA.all, ofB.all)
    );
  });
  const across = sizeAlong(piece, axis === 'x' ? 'y' : 'x');
  if (spares.length > 0) {
    const used = wanted.reduce((sum, child) => sum + sizeAlong(child, axis) + saw.kerfUm, 0);
    wanted.push(mergeSpares(spares, axis, across, sizeAlong(piece, axis) - used, saw));
  }
  const only = wanted.length === 1 ? wanted[0]! : null;
  if (only !== null && sizeAlong(only, axis) === sizeAlong(piece, axis)) return only;
  return { kind: 'stack', axis, xUm, yUm, children: wanted };
}
