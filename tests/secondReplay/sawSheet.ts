import { Fraction } from './fraction.ts';
import { asSide, other, type Piece, refuse, type Saw, type Side } from './pieces.ts';
import type { Written } from './planAsWritten.ts';

/** One sheet, sawn step by step as the plan says. Throws `NotSawable` where it cannot be. */
export class SheetOnSaw {
  readonly pieces = new Map<string, Piece>();
  private readonly names = new Set<string>();
  private readonly trimmed = new Set<string>();
  private firstBlade: Side | null = null;
  private readonly stock: Written;
  private readonly saw: Saw;

  constructor(sheet: Written, stock: Written, saw: Saw) {
    this.stock = stock;
    this.saw = saw;
    this.lay({
      name: sheet.text('start'),
      from: { length: Fraction.zero, width: Fraction.zero },
      size: { length: stock.number('length'), width: stock.number('width') },
      within: [],
      blade: null,
      directions: 0,
      parted: false,
    });
    for (const step of sheet.parts('steps')) {
      if (step.text('cut') === 'trim') this.trim(step);
      else this.part(step);
    }
    const trim = this.stock.part('trim');
    for (const edge of ['left', 'right', 'near', 'far']) {
      if (trim.number(edge).isPositive() && !this.trimmed.has(edge))
        refuse(`the ${edge} edge is not trimmed`);
    }
  }

  private lay(piece: Piece): void {
    if (this.names.has(piece.name)) refuse(`two pieces are called ${piece.name}`);
    if (!piece.size.length.isPositive() || !piece.size.width.isPositive())
      refuse(`nothing is left of ${piece.name}`);
    this.names.add(piece.name);
    this.pieces.set(piece.name, piece);
  }

  private takeUp(name: string): Piece {
    const piece = this.pieces.get(name) ?? refuse(`there is no ${name}`);
    this.pieces.delete(name);
    return piece;
  }

  private trim(step: Written): void {
    const piece = this.takeUp(step.text('piece'));
    const edge = step.text('side');
    const take = step.number('take');
    if (this.firstBlade !== null) refuse(`${piece.name} is trimmed after it was divided`);
    if (this.trimmed.has(edge)) refuse(`the ${edge} edge is trimmed twice`);
    if (!take.equals(this.stock.part('trim').number(edge)) || !take.isPositive())
      refuse(`the trim on the ${edge} takes ${take}`);
    this.trimmed.add(edge);
    // A trim on the left or right shortens the length; the blade runs along the width.
    const across: Side = edge === 'left' || edge === 'right' ? 'length' : 'width';
    this.saw.holdsCut(piece.size[other(across)], piece.name);
    const atStart = edge === 'left' || edge === 'near';
    this.lay({
      ...piece,
      name: step.text('leaves'),
      from: { ...piece.from, [across]: atStart ? piece.from[across].plus(take) : piece.from[across] },
      size: { ...piece.size, [across]: piece.size[across].minus(take) },
      within: [...piece.within, piece],
    });
  }

  private part(step: Written): void {
    const piece = this.takeUp(step.text('piece'));
    const blade = asSide(step.text('blade'));
    const across = other(blade);
    const kind = step.text('cut');
    const fence = step.number('fence');
    const take = step.number('take');
    const gives = step.texts('gives');
    if (!fence.isPositive() || !fence.isLessThan(piece.size[across]))
      refuse(`the fence is not on ${piece.name}`);
    this.saw.holdsCut(piece.size[blade], piece.name);
    this.saw.holdsStrip(fence, `the strip at the fence of ${piece.name}`);
    this.checkFirst(blade);
    // A blank that is parted is turned at will.
    const directions = piece.directions + (kind === 'part' || piece.blade === blade ? 0 : 1);
    this.saw.holdsTurns(directions, piece.name);
    const name = directions > 2 ? 'recut' : blade === 'length' ? 'rip' : 'crosscut';
    if (kind !== 'part' && kind !== name) refuse(`the ${kind} of ${piece.name} is a ${name}`);
    const beyond = piece.size[across].minus(fence).minus(take);
    if (gives.length === 2 && !take.equals(this.saw.kerf)) refuse(`the blade takes ${take} of ${piece.name}`);
    if (gives.length === 1 && (take.isMoreThan(this.saw.kerf) || !beyond.equals(Fraction.zero)))
      refuse(`something of ${piece.name} is left beyond the kerf, without a name`);
    const cut = { within: [...piece.within, piece], blade, directions, parted: kind === 'part' };
    if (piece.parted && !cut.parted) refuse(`${piece.name} came out of a blank and is not parted further`);
    this.lay({ ...cut, name: gives[0]!, from: piece.from, size: { ...piece.size, [across]: fence } });
    if (gives.length < 2) return;
    const from = { ...piece.from, [across]: piece.from[across].plus(fence).plus(take) };
    this.lay({ ...cut, name: gives[1]!, from, size: { ...piece.size, [across]: beyond } });
  }

  private checkFirst(blade: Side): void {
    if (this.firstBlade !== null) return;
    this.firstBlade = blade;
    const { firstCut } = this.saw;
    if ((firstCut === 'rip' && blade !== 'length') || (firstCut === 'crosscut' && blade !== 'width'))
      refuse(`the first cut is no ${firstCut}`);
  }
}
