import type { SawWithTrim } from '../../src/demands/index.ts';
import type { Part } from '../../src/model/part.ts';
import type { SheetSupply } from '../../src/model/stock.ts';

/** A part of grey 15 mm ply; sizes in mm, the rest as given. */
export function part(id: string, lengthMm: number, widthMm: number, more: Partial<Part> = {}): Part {
  return {
    id,
    name: id,
    unit: '',
    order: '',
    board: 'ply',
    finish: 'grey',
    thicknessUm: 15_000,
    finishedLengthUm: Math.round(lengthMm * 1000),
    finishedWidthUm: Math.round(widthMm * 1000),
    cutLengthUm: Math.round(lengthMm * 1000),
    cutWidthUm: Math.round(widthMm * 1000),
    grain: 'length',
    edging: { alongLength: [null, null], alongWidth: [null, null] },
    count: 1,
    ...more,
  };
}

/** Any number of sheets of the same ply, grain along their length, at 100.00 each; sizes in mm. */
export function supply(lengthMm: number, widthMm: number, more: Partial<SheetSupply> = {}): SheetSupply {
  return {
    id: `${lengthMm}x${widthMm}`,
    board: 'ply',
    finish: 'grey',
    thicknessUm: 15_000,
    lengthUm: Math.round(lengthMm * 1000),
    widthUm: Math.round(widthMm * 1000),
    grain: 'length',
    priceMinor: 10_000,
    count: null,
    kind: 'sheet',
    ...more,
  };
}

/** Kerf 3.2, trim 10 all round, no other rules. */
export function saw(more: Partial<SawWithTrim> = {}): SawWithTrim {
  return {
    name: 'test saw',
    kerfUm: 3200,
    firstCut: 'either',
    turns: null,
    smallestPartUm: 50_000,
    leastOffcut: { lengthUm: 400_000, widthUm: 200_000 },
    longestCutUm: null,
    cuttingHeightUm: null,
    trimUm: { left: 10_000, right: 10_000, near: 10_000, far: 10_000 },
    ...more,
  };
}

/** Trims of the same size all round, in mm. */
export function trimAllRound(mm: number): SawWithTrim['trimUm'] {
  const um = Math.round(mm * 1000);
  return { left: um, right: um, near: um, far: um };
}
