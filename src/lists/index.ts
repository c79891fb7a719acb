import { checkedValue, errorFinding } from '../basics/findings.ts';
import { roundDownToTenth, roundToTenth } from '../basics/lengths.ts';
import type { Checked } from '../model/finding.ts';
import type { Part } from '../model/part.ts';
import type { SheetSupply } from '../model/stock.ts';
import { CellReader, shortenFindings } from './cells.ts';
import { type ListColumns, type ListRow, readCsvTable } from './csvTable.ts';

export { matchLists } from './matchLists.ts';

/** Most pieces of one list together: what a year of sawing needs. */
const MOST_PIECES = 1_000_000;

const PANEL_COLUMNS: ListColumns = {
  needed: ['name', 'length', 'width'],
  optional: [
    'count',
    'grain',
    'thickness',
    'board',
    'finish',
    'edging length 1',
    'edging length 2',
    'edging width 1',
    'edging width 2',
    'unit',
  ],
};

const SHEET_COLUMNS: ListColumns = {
  needed: ['length', 'width'],
  optional: ['name', 'grain', 'count', 'price', 'thickness', 'board', 'finish', 'kind'],
};

function readPart(cells: CellReader, row: ListRow): Part {
  const edging = (column: string) => {
    const name = cells.material(row, column);
    return name === '' || name.toLowerCase() === 'none' || name === '-' ? null : name;
  };
  const lengthUm = roundToTenth(cells.sizeUm(row, 'length'));
  const widthUm = roundToTenth(cells.sizeUm(row, 'width'));
  if (lengthUm === 0 || widthUm === 0) {
    const column = lengthUm === 0 ? 'length' : 'width';
    const message = `\`${column}\` is less than 0.1 mm.`;
    cells.report(errorFinding('out-of-range', message, cells.placeOf(row, column)));
  }
  const grain = cells.word(row, 'grain', ['none', 'length', 'width']);
  const alongLength = [edging('edging length 1'), edging('edging length 2')] as const;
  const alongWidth = [edging('edging width 1'), edging('edging width 2')] as const;
  // Inside the program a part's length runs with its grain.
  const turned = grain === 'width';
  const sizes = turned ? { length: widthUm, width: lengthUm } : { length: lengthUm, width: widthUm };
  return {
    id: `line-${row.line}`,
    name: cells.neededText(row, 'name'),
    unit: cells.text(row, 'unit'),
    order: '',
    board: cells.material(row, 'board'),
    finish: cells.material(row, 'finish'),
    thicknessUm: cells.optionalSizeUm(row, 'thickness', 0),
    finishedLengthUm: sizes.length,
    finishedWidthUm: sizes.width,
    cutLengthUm: sizes.length,
    cutWidthUm: sizes.width,
    grain: grain === 'none' ? 'none' : 'length',
    edging: turned ? { alongLength: alongWidth, alongWidth: alongLength } : { alongLength, alongWidth },
    count: cells.count(row, 1),
  };
}

/**
 * The panels of a plain list (CSV with a header line): columns `name`, `length`, `width` and, if wanted, `count`, `grain`,
 * `thickness`, `board`, `finish`, `edging length 1`, `edging length 2`, `edging width 1`, `edging width 2`, `unit`. Sizes
 * are cut sizes, rounded to 0.1 mm; nothing is taken off for edging. Grain along `width` swaps the two figures and
 * their edgings, so that the length runs with the grain. A part's id is `line-` and its line in the file. Board and
 * finish are empty and the thickness 0 where the list says nothing (see `matchLists`). At most 200,000 rows and
 * 1,000,000 pieces. Every error comes back at once, with its line and column name.
 */
export function readPanelList(text: string, file: string): Checked<readonly Part[]> {
  const table = readCsvTable(text, file, PANEL_COLUMNS);
  const cells = new CellReader(file);
  const parts = table.rows?.map((row) => readPart(cells, row));
  const pieces = (parts ?? []).reduce((sum, part) => sum + part.count, 0);
  if (pieces > MOST_PIECES) {
    const details = { found: `${pieces} pieces`, expected: `at most ${MOST_PIECES}` };
    cells.report(errorFinding('too-many-panels', 'The list asks for too many pieces.', { file }, details));
  }
  return checkedValue(parts, shortenFindings([...table.findings, ...cells.findings], file));
}

function readSheet(cells: CellReader, row: ListRow): SheetSupply {
  const kind = cells.word(row, 'kind', ['sheet', 'offcut']);
  const name = cells.text(row, 'name').replace(/\n/g, ' ');
  return {
    id: name === '' ? `${kind} of line ${row.line}` : name,
    board: cells.material(row, 'board'),
    finish: cells.material(row, 'finish'),
    thicknessUm: cells.optionalSizeUm(row, 'thickness', 0),
    lengthUm: roundDownToTenth(cells.sizeUm(row, 'length')),
    widthUm: roundDownToTenth(cells.sizeUm(row, 'width')),
    grain: cells.word(row, 'grain', ['none', 'length', 'width']),
    priceMinor: cells.priceMinor(row, 'price'),
    count: cells.count(row, null),
    kind,
  };
}

/** Sheets that share a name could not be told apart on paper. */
function checkNames(cells: CellReader, rows: readonly ListRow[], sheets: readonly SheetSupply[]): void {
  const lines = new Map<string, number>();
  for (const [index, sheet] of sheets.entries()) {
    const row = rows[index]!;
    const before = lines.get(sheet.id);
    if (before === undefined) {
      lines.set(sheet.id, row.line);
      continue;
    }
    const message = `This name is used on line ${before} already.`;
    const details = { found: sheet.id, advice: 'Give each row its own name, or leave the names out.' };
    cells.report(errorFinding('duplicate-name', message, cells.placeOf(row, 'name'), details));
  }
}

/** Prices are compared only when every sheet to be bought has one. */
function checkPrices(cells: CellReader, rows: readonly ListRow[], sheets: readonly SheetSupply[]): void {
  if (!sheets.some((sheet) => sheet.kind === 'sheet' && sheet.priceMinor !== null)) return;
  for (const [index, sheet] of sheets.entries()) {
    const row = rows[index]!;
    if (sheet.kind !== 'sheet' || (row.cells.get('price') ?? '') !== '') continue;
    cells.report(
      errorFinding(
        'missing-price',
        'This sheet has no price, but others have.',
        cells.placeOf(row, 'price'),
        {
          advice: 'Give every sheet a price, or none: then their areas are compared. Offcuts need none.',
        },
      ),
    );
  }
}

/**
 * The sheets of a plain list (CSV with a header line): columns `length`, `width` and, if wanted, `name`, `grain`, `count`
 * (empty for any number), `price` (for every sheet or for none), `thickness`, `board`, `finish`, `kind` (`sheet` or
 * `offcut`). Sizes are rounded down to 0.1 mm. Board and finish are empty and the thickness 0 where the list says
 * nothing (see `matchLists`). Every error comes back at once, with its line and column name.
 */
export function readSheetList(text: string, file: string): Checked<readonly SheetSupply[]> {
  const table = readCsvTable(text, file, SHEET_COLUMNS);
  const cells = new CellReader(file);
  const rows = table.rows ?? [];
  const sheets = table.rows === undefined ? undefined : rows.map((row) => readSheet(cells, row));
  checkNames(cells, rows, sheets ?? []);
  checkPrices(cells, rows, sheets ?? []);
  return checkedValue(sheets, shortenFindings([...table.findings, ...cells.findings], file));
}
