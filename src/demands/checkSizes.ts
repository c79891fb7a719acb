import { shownText } from '../basics/findings.ts';
import { printMm, printMmShort } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { Part } from '../model/part.ts';
import type { SawRules, StockSheet } from '../model/stock.ts';
import { usableSize } from './makeSheets.ts';

/**
 * Parts shorter than the first and narrower than the second call for a push stick and a second thought. From the rules
 * on keeping hands off: any cut shorter than 300 mm, and clearing pieces not wider than 150 mm (HSE Woodworking Sheet
 * 16, as quoted; used here as a default, not as a legal limit).
 */
const PUSH_STICK_LENGTH_UM = 300_000;
const PUSH_STICK_WIDTH_UM = 150_000;

/** Whether a size fits a sheet after its trims; with `grain: 'length'` only with its length along the sheet's grain. */
export function fitsSheet(
  size: { readonly lengthUm: number; readonly widthUm: number; readonly grain: 'length' | 'none' },
  sheet: StockSheet,
): boolean {
  const usable = usableSize(sheet);
  const straight = size.lengthUm <= usable.lengthUm && size.widthUm <= usable.widthUm;
  const turned = size.lengthUm <= usable.widthUm && size.widthUm <= usable.lengthUm;
  if (size.grain === 'none' || sheet.grain === 'none') return straight || turned;
  return sheet.grain === 'length' ? straight : turned;
}

/** The part as a person finds it: name, unit and order. */
export function describePart(part: Part): string {
  const where = [part.unit, part.order].filter((word) => word !== '').join(', ');
  return `"${shownText(part.name)}"${where === '' ? '' : ` (${shownText(where)})`}`;
}

function usableText(sheet: StockSheet): string {
  const usable = usableSize(sheet);
  const size = `${printMmShort(usable.lengthUm)} × ${printMmShort(usable.widthUm)}`;
  switch (sheet.grain) {
    case 'length':
      return `${size} with the grain along the first figure`;
    case 'width':
      return `${size} with the grain along the second figure`;
    case 'none':
      return `${size} without grain`;
  }
}

function tooLarge(part: Part, sheets: readonly StockSheet[]): Finding {
  const size = `${printMm(part.cutLengthUm)} × ${printMm(part.cutWidthUm)}`;
  const turnable = { lengthUm: part.cutLengthUm, widthUm: part.cutWidthUm, grain: 'none' } as const;
  const onlyGrain = part.grain === 'length' && sheets.some((sheet) => fitsSheet(turnable, sheet));
  const usable = [...new Set(sheets.map(usableText))];
  const more = usable.length > 6 ? `; and ${usable.length - 6} more` : '';
  return {
    code: 'panel-too-large',
    severity: 'error',
    message: onlyGrain
      ? `Panel ${describePart(part)} is cut ${size} mm along and across the grain and fits no sheet that way round.`
      : `Panel ${describePart(part)} is cut ${size} mm and is larger than every sheet.`,
    found: `${size} mm`,
    expected: `at most what the trims leave of a sheet: ${usable.slice(0, 6).join('; ')}${more}`,
    advice: onlyGrain
      ? 'Let its grain run the other way, add a sheet with the grain across, or divide the panel.'
      : 'Add a larger sheet, or divide the panel.',
  };
}

function tooNarrow(part: Part, saw: SawRules): Finding {
  const width = Math.min(part.cutLengthUm, part.cutWidthUm);
  return {
    code: 'panel-too-narrow',
    severity: 'error',
    message: `Panel ${describePart(part)} is only ${printMm(width)} mm wide; saw "${shownText(saw.name)}" cannot hold less than ${printMm(saw.smallestPartUm)} mm safely.`,
    found: `${printMm(width)} mm`,
    expected: `at least ${printMm(saw.smallestPartUm)} mm`,
    advice: 'Make the panel wider, or cut it by other means and leave it off this list.',
  };
}

function smallParts(parts: readonly Part[]): Finding[] {
  const small = parts.filter(
    (part) =>
      Math.max(part.cutLengthUm, part.cutWidthUm) < PUSH_STICK_LENGTH_UM &&
      Math.min(part.cutLengthUm, part.cutWidthUm) < PUSH_STICK_WIDTH_UM,
  );
  if (small.length === 0) return [];
  // One panel to a line would bury the rest; three names say which kind is meant.
  const names = small.slice(0, 3).map(describePart).join(', ');
  const more = small.length > 3 ? ` and ${small.length - 3} more` : '';
  const limit = `${printMmShort(PUSH_STICK_LENGTH_UM)} × ${printMmShort(PUSH_STICK_WIDTH_UM)}`;
  return [
    {
      code: 'small-panels',
      severity: 'caution',
      message: `${names}${more} ${small.length === 1 ? 'is' : 'are'} smaller than ${limit} mm: keep the hands away and use a push stick.`,
      advice: 'Cut small panels last, from a piece that is large enough to hold.',
    },
  ];
}

/** Findings on the sizes of a group's parts: too large for every sheet, too narrow to hold, small enough for care. */
export function checkSizes(parts: readonly Part[], sheets: readonly StockSheet[], saw: SawRules): Finding[] {
  const findings: Finding[] = [];
  for (const part of parts) {
    const size = { lengthUm: part.cutLengthUm, widthUm: part.cutWidthUm, grain: part.grain };
    if (!sheets.some((sheet) => fitsSheet(size, sheet))) findings.push(tooLarge(part, sheets));
    if (Math.min(part.cutLengthUm, part.cutWidthUm) < saw.smallestPartUm) findings.push(tooNarrow(part, saw));
  }
  return [...findings, ...smallParts(parts)];
}
