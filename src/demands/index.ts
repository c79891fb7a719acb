import { shownText } from '../basics/findings.ts';
import { roundToTenth, roundUpToTenth } from '../basics/lengths.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type { Finding } from '../model/finding.ts';
import type { Part } from '../model/part.ts';
import type { SawRules, SheetSupply, StockGroup, Trim } from '../model/stock.ts';
import { checkSizes } from './checkSizes.ts';
import { makeDemands } from './makeDemands.ts';
import { makeSheets } from './makeSheets.ts';
import { nameGroups } from './nameGroups.ts';

/** A saw's rules with what it takes off each side of a raw sheet. */
export interface SawWithTrim extends SawRules {
  readonly trimUm: Trim;
}

export interface StockGroups {
  readonly groups: readonly StockGroup[];
  /** Errors mean that a group cannot be cut; warnings and cautions do not. */
  readonly findings: readonly Finding[];
}

/** Everything of one board, finish and thickness. */
interface Heap {
  readonly board: string;
  readonly finish: string;
  readonly thicknessUm: number;
  readonly parts: Part[];
}

function onGrid(part: Part): Part {
  return { ...part, cutLengthUm: roundToTenth(part.cutLengthUm), cutWidthUm: roundToTenth(part.cutWidthUm) };
}

function sortIntoHeaps(parts: readonly Part[]): Heap[] {
  const heaps = new Map<string, Heap>();
  for (const part of parts) {
    const key = JSON.stringify([part.board, part.finish, part.thicknessUm]);
    const heap = heaps.get(key);
    if (heap) heap.parts.push(onGrid(part));
    else {
      const { board, finish, thicknessUm } = part;
      heaps.set(key, { board, finish, thicknessUm, parts: [onGrid(part)] });
    }
  }
  return [...heaps.values()];
}

function describe(kind: { board: string; finish: string; thicknessUm: number }): string {
  const words = [kind.board, kind.finish].filter((word) => word !== '').join(' in ');
  const name = words === '' ? 'board' : shownText(words);
  return kind.thicknessUm === 0 ? name : `${name}, ${kind.thicknessUm / 1000} mm thick`;
}

function noSheets(heap: Heap, supplies: readonly SheetSupply[]): Finding {
  const onHand = [...new Set(supplies.map(describe))];
  const wanted = describe(heap);
  const nearest = nearestWord(wanted, onHand);
  return {
    code: 'no-sheets',
    severity: 'error',
    message: `No sheets of ${wanted} are listed, and ${heap.parts.length === 1 ? 'one panel needs' : `${heap.parts.length} panels need`} them.`,
    found: wanted,
    expected: onHand.length === 0 ? 'at least one sheet' : `one of: ${onHand.slice(0, 12).join('; ')}`,
    ...(nearest === undefined ? {} : { nearest }),
    advice: 'List a sheet of that board, finish and thickness, or give the panels another board.',
  };
}

/**
 * Parts and the sheets on hand → stock groups: one per board, finish and thickness, in the order in which the parts
 * first name them. Parts of one size and grain become one demand; a row of matched fronts becomes one blank, kerfs
 * between the fronts included. Sheet sizes are rounded down and kerf and trims up to whole 0.1 mm. A panel that fits
 * no sheet, a panel too small to hold and a group without sheets come back as errors; no group that is returned
 * holds such a panel, so that every one can be nested.
 */
export function makeStockGroups(
  parts: readonly Part[],
  supplies: readonly SheetSupply[],
  saw: SawWithTrim,
): StockGroups {
  const { trimUm, ...given } = saw;
  const rules: SawRules = { ...given, kerfUm: roundUpToTenth(given.kerfUm) };
  const heaps = sortIntoHeaps(parts);
  const ids = nameGroups(heaps);
  const groups: StockGroup[] = [];
  const findings: Finding[] = [];
  heaps.forEach((heap, index) => {
    const own = supplies.filter(
      (s) => s.board === heap.board && s.finish === heap.finish && s.thicknessUm === heap.thicknessUm,
    );
    const made = makeSheets(own, trimUm);
    findings.push(...made.findings);
    if (made.sheets.length === 0) {
      if (own.length === 0) findings.push(noSheets(heap, supplies));
      else
        findings.push({
          ...noSheets(heap, supplies),
          message: `Every sheet of ${describe(heap)} is used up or too small.`,
        });
      return;
    }
    const sizes = checkSizes(heap.parts, made.sheets, rules);
    findings.push(...sizes);
    if (sizes.some((finding) => finding.severity === 'error')) return;
    const demands = makeDemands(heap.parts, made.sheets, rules.kerfUm);
    findings.push(...demands.findings);
    groups.push({
      id: ids[index]!,
      board: heap.board,
      finish: heap.finish,
      thicknessUm: heap.thicknessUm,
      parts: heap.parts,
      demands: demands.demands,
      sheets: made.sheets,
      saw: rules,
      pricedBy: made.pricedBy,
    });
  });
  return { groups, findings };
}
