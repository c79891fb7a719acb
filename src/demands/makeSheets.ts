import { shownText } from '../basics/findings.ts';
import { printMmShort, roundDownToTenth, roundUpToTenth } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { SheetSupply, StockSheet, Trim } from '../model/stock.ts';

const UM2_PER_MM2 = 1_000_000;

/** An offcut was sawn on all sides when it was kept, so nothing is taken off again. */
const NO_TRIM: Trim = { left: 0, right: 0, near: 0, far: 0 };

/** What can be cut from a sheet once its trims are off, in µm along its length and width; not below 0. */
export function usableSize(sheet: StockSheet): { readonly lengthUm: number; readonly widthUm: number } {
  return {
    lengthUm: Math.max(0, sheet.lengthUm - sheet.trim.left - sheet.trim.right),
    widthUm: Math.max(0, sheet.widthUm - sheet.trim.near - sheet.trim.far),
  };
}

function areaPrice(sheet: { lengthUm: number; widthUm: number }): number {
  return Math.round((sheet.lengthUm * sheet.widthUm) / UM2_PER_MM2);
}

function priceOf(
  supply: SheetSupply,
  size: { lengthUm: number; widthUm: number },
  by: 'price' | 'area',
): number {
  if (supply.kind === 'offcut' && supply.priceMinor === null) return 0;
  return by === 'area' ? areaPrice(size) : (supply.priceMinor ?? 0);
}

function tooSmall(supply: SheetSupply): Finding {
  const size = `${printMmShort(supply.lengthUm)} × ${printMmShort(supply.widthUm)}`;
  return {
    code: 'sheet-too-small',
    severity: 'warning',
    message: `Nothing is left of ${supply.kind} "${shownText(supply.id)}" (${size} mm) once its sides are trimmed, so it is not used.`,
    found: `${size} mm`,
    advice: 'Check its size and the trim of the saw.',
  };
}

/**
 * The sheets of one group as the saw sees them: sizes down and trims up to whole 0.1 mm, ids made unique. Sheets of
 * which none is left are passed over. Where any sheet that has to be bought has no price, the area in mm² is the price
 * of every sheet of the group, and `pricedBy` says so; offcuts without a price cost nothing.
 */
export function makeSheets(
  supplies: readonly SheetSupply[],
  trimUm: Trim,
): { readonly sheets: StockSheet[]; readonly pricedBy: 'price' | 'area'; readonly findings: Finding[] } {
  const pricedBy = supplies.some((s) => s.kind === 'sheet' && s.priceMinor === null) ? 'area' : 'price';
  const sheetTrim: Trim = {
    left: roundUpToTenth(trimUm.left),
    right: roundUpToTenth(trimUm.right),
    near: roundUpToTenth(trimUm.near),
    far: roundUpToTenth(trimUm.far),
  };
  const sheets: StockSheet[] = [];
  const findings: Finding[] = [];
  const taken = new Set<string>();
  for (const supply of supplies) {
    if (supply.count === 0) continue;
    let id = supply.id;
    for (let again = 2; taken.has(id); again++) id = `${supply.id} (${again})`;
    const size = {
      lengthUm: roundDownToTenth(supply.lengthUm),
      widthUm: roundDownToTenth(supply.widthUm),
    };
    const sheet: StockSheet = {
      id,
      ...size,
      grain: supply.grain,
      priceMinor: priceOf(supply, size, pricedBy),
      count: supply.count,
      kind: supply.kind,
      trim: supply.kind === 'offcut' ? NO_TRIM : sheetTrim,
    };
    const usable = usableSize(sheet);
    if (usable.lengthUm === 0 || usable.widthUm === 0) {
      findings.push(tooSmall(supply));
      continue;
    }
    taken.add(id);
    sheets.push(sheet);
  }
  return { sheets, pricedBy, findings };
}
