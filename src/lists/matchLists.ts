import { checkedValue, errorFinding, listWords, shownText } from '../basics/findings.ts';
import { printMmShort } from '../basics/lengths.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Part } from '../model/part.ts';
import type { SheetSupply } from '../model/stock.ts';
import { shortenFindings } from './cells.ts';

/** What decides whether a panel can be cut from a sheet. */
interface Material {
  readonly board: string;
  readonly finish: string;
  readonly thicknessUm: number;
}

const FIELDS = ['board', 'finish', 'thicknessUm'] as const;
type Field = (typeof FIELDS)[number];

const COLUMN: Readonly<Record<Field, string>> = {
  board: 'board',
  finish: 'finish',
  thicknessUm: 'thickness',
};

const isGiven = (material: Material, field: Field) => material[field] !== '' && material[field] !== 0;

const plainWord = (value: string | number) => String(value).toLowerCase();

function describe(material: Material): string {
  const words = [
    material.thicknessUm === 0 ? '' : `${printMmShort(material.thicknessUm)} mm`,
    material.board,
    material.finish,
  ];
  const given = words.filter((word) => word !== '');
  return given.length === 0 ? 'no board named' : given.map(shownText).join(', ');
}

const keyOf = (material: Material) => JSON.stringify(FIELDS.map((field) => plainWord(material[field])));

/** One material per kind that occurs in a list, in the order of their first rows. */
function kindsOf<M extends Material>(list: readonly M[]): M[] {
  const kinds = new Map<string, M>();
  for (const entry of list) {
    const key = keyOf(entry);
    if (!kinds.has(key)) kinds.set(key, entry);
  }
  return [...kinds.values()];
}

/** Whether two materials say nothing different of each other; what one does not say fits anything. */
function mayBeAlike(a: Material, b: Material): boolean {
  return FIELDS.every(
    (field) => !isGiven(a, field) || !isGiven(b, field) || plainWord(a[field]) === plainWord(b[field]),
  );
}

/** A material with what it does not say taken from another; where both say something, the first one's spelling. */
function fillUp(material: Material, from: Material): Material {
  return {
    board: isGiven(material, 'board') ? material.board : from.board,
    finish: isGiven(material, 'finish') ? material.finish : from.finish,
    thicknessUm: isGiven(material, 'thicknessUm') ? material.thicknessUm : from.thicknessUm,
  };
}

/** The sheets that were most likely meant, compared by what the panel says. */
function nearestKind(part: Material, sheets: readonly Material[]): string | undefined {
  const asSaid = sheets.map((sheet) =>
    describe({
      board: isGiven(part, 'board') ? sheet.board : '',
      finish: isGiven(part, 'finish') ? sheet.finish : '',
      thicknessUm: isGiven(part, 'thicknessUm') ? sheet.thicknessUm : 0,
    }),
  );
  const nearest = nearestWord(describe(part), asSaid);
  return nearest === undefined ? undefined : describe(sheets[asSaid.indexOf(nearest)]!);
}

function wordNoMatch(part: Part, sheets: readonly Material[], files: ListFiles): Finding {
  const words = sheets.map(describe);
  return errorFinding(
    'no-sheets',
    `No sheet in ${files.sheets} is of the board of the panel \`${shownText(part.name)}\`.`,
    placeOfPart(part, files),
    {
      found: describe(part),
      expected: listWords(words.map((word) => `(${word})`)),
      nearest: nearestKind(part, sheets),
      advice: 'Thickness, board and finish must be the same words in both lists.',
    },
  );
}

function wordManyMatches(part: Part, fitting: readonly Material[], files: ListFiles): Finding {
  const unsaid = FIELDS.filter((field) => !isGiven(part, field)).map((field) => COLUMN[field]);
  return errorFinding(
    'unclear-board',
    `The panel \`${shownText(part.name)}\` could be cut from several boards in ${files.sheets}.`,
    placeOfPart(part, files),
    {
      found: describe(part),
      expected: listWords(fitting.map((material) => `(${describe(material)})`)),
      advice: `Fill in ${listWords(unsaid.length === 0 ? Object.values(COLUMN) : unsaid, 'and')} in both lists.`,
    },
  );
}

function wordUnclearSheets(part: Part, sheet: Material, files: ListFiles): Finding {
  const unsaid = FIELDS.filter((field) => isGiven(part, field) && !isGiven(sheet, field));
  return errorFinding(
    'unclear-board',
    `The sheets in ${files.sheets} do not say enough to tell whether \`${shownText(part.name)}\` is cut from them.`,
    placeOfPart(part, files),
    {
      found: describe(part),
      expected: describe(sheet),
      advice: `The panels are of several boards: fill in ${listWords(
        unsaid.map((field) => COLUMN[field]),
        'and',
      )} for the sheets.`,
    },
  );
}

function placeOfPart(part: Part, files: ListFiles) {
  const line = /^line-([0-9]+)$/.exec(part.id)?.[1];
  return line === undefined ? { file: files.panels } : { file: files.panels, line: Number(line) };
}

/** Names of the two files, to show. */
export interface ListFiles {
  readonly panels: string;
  readonly sheets: string;
}

/**
 * Brings the boards of a panel list and a sheet list together, so that equal boards are spelt alike in both: case does
 * not count, and what one list does not say (a column left out) is taken from the other where that leaves exactly one
 * board. A panel without any sheet, or with sheets of several boards, comes back as an error with its line; of each
 * kind of board only the first panel. `parts` and `sheets` keep their order.
 */
export function matchLists(
  parts: readonly Part[],
  sheets: readonly SheetSupply[],
  files: ListFiles,
): Checked<{ readonly parts: readonly Part[]; readonly sheets: readonly SheetSupply[] }> {
  const findings: Finding[] = [];
  const sheetKinds = kindsOf(sheets);
  // What the sheets leave out is filled up first, from the panels where those agree on it.
  const partKinds = kindsOf(parts);
  const fullSheetKinds = sheetKinds.map((kind) => {
    const fitting = partKinds.filter((part) => mayBeAlike(kind, part));
    return fitting.length === 1 ? { ...kind, ...fillUp(kind, fitting[0]!) } : kind;
  });
  const sheetAs = new Map(sheetKinds.map((kind, index) => [keyOf(kind), fullSheetKinds[index]!]));
  const partAs = new Map<string, Material>();
  for (const kind of partKinds) {
    const fitting = fullSheetKinds.filter((sheet) => mayBeAlike(kind, sheet));
    const [only, another] = fitting;
    if (only === undefined) findings.push(wordNoMatch(kind, sheetKinds, files));
    else if (another !== undefined) findings.push(wordManyMatches(kind, fitting, files));
    else if (keyOf(fillUp(only, kind)) !== keyOf(only)) findings.push(wordUnclearSheets(kind, only, files));
    else partAs.set(keyOf(kind), only);
  }
  const spelt = <M extends Material>(entry: M, as: Material | undefined): M =>
    as === undefined ? entry : { ...entry, board: as.board, finish: as.finish, thicknessUm: as.thicknessUm };
  return checkedValue(
    {
      parts: parts.map((part) => spelt(part, partAs.get(keyOf(part)))),
      sheets: sheets.map((sheet) => spelt(sheet, sheetAs.get(keyOf(sheet)))),
    },
    shortenFindings(findings, files.panels),
  );
}
