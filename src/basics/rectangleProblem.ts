import type { RectangleProblem, RectangleSheet } from '../model/rectangles.ts';
import type { StockGroup, StockSheet } from '../model/stock.ts';
import { TENTH_MM_UM } from './lengths.ts';

function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

/** Usable size of a sheet plus one kerf along its length and width, in µm; never below 0. */
function usablePlusKerf(sheet: StockSheet, kerfUm: number): { length: number; width: number } {
  return {
    length: Math.max(0, sheet.lengthUm - sheet.trim.left - sheet.trim.right) + kerfUm,
    width: Math.max(0, sheet.widthUm - sheet.trim.near - sheet.trim.far) + kerfUm,
  };
}

function firstBlade(rule: 'rip' | 'crosscut' | 'either', transposed: boolean): RectangleSheet['firstBlade'] {
  if (rule === 'either') return 'either';
  return (rule === 'rip') === transposed ? 'h' : 'w';
}

/**
 * Takes a stock group down to whole numbers. Throws when a size is not in whole 0.1 mm or too large for 32 bits:
 * the stage before must have rounded (kerf and trim up, sheets down, cut sizes to the nearest).
 */
export function makeRectangleProblem(group: StockGroup): RectangleProblem {
  const kerfUm = group.saw.kerfUm;
  const sizes: number[] = [];
  const keep = (um: number): number => {
    if (!Number.isSafeInteger(um) || um < 0 || um % TENTH_MM_UM !== 0) {
      throw new Error(`a size in stock group ${group.id} is not in whole tenths of a millimetre: ${um} µm`);
    }
    sizes.push(um);
    return um;
  };
  keep(kerfUm);
  const items = group.demands.map((d) => ({ w: keep(d.lengthUm + kerfUm), h: keep(d.widthUm + kerfUm) }));
  const sheets = group.sheets.map((sheet) => {
    const usable = usablePlusKerf(sheet, kerfUm);
    const transposed = sheet.grain === 'width';
    return {
      w: keep(transposed ? usable.width : usable.length),
      h: keep(transposed ? usable.length : usable.width),
      transposed,
      noGrain: sheet.grain === 'none',
    };
  });
  const unitUm = sizes.reduce(greatestCommonDivisor, 0) || TENTH_MM_UM;
  if (sizes.some((size) => size / unitUm > 0x3fffffff)) {
    throw new Error(`a size in stock group ${group.id} is too large to nest`);
  }
  return {
    unitUm,
    kerf: kerfUm / unitUm,
    items: {
      kinds: items.length,
      w: Int32Array.from(items, (item) => item.w / unitUm),
      h: Int32Array.from(items, (item) => item.h / unitUm),
      count: Int32Array.from(group.demands, (d) => d.count),
      grained: Uint8Array.from(group.demands, (d) => (d.grain === 'length' ? 1 : 0)),
    },
    sheets: sheets.map((sheet, index) => ({
      sheet: index,
      w: sheet.w / unitUm,
      h: sheet.h / unitUm,
      costMinor: group.sheets[index]!.priceMinor,
      count: group.sheets[index]!.count ?? -1,
      noGrain: sheet.noGrain,
      transposed: sheet.transposed,
      firstBlade: firstBlade(group.saw.firstCut, sheet.transposed),
    })),
  };
}
