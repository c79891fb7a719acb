import type { GroupSummary } from '../../src/pipeline/makePapers.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { money } from '../terminal/money.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { counted, printable } from '../terminal/text.ts';

const LONGEST_NAME = 24;

function shorten(text: string, most: number): string {
  const plain = printable(text);
  return plain.length <= most ? plain : `${plain.slice(0, most - 1)}…`;
}

function verdict(group: GroupSummary): string {
  return group.proved ? 'proved best' : `within ${group.withinPercent} %`;
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** Board and finish, with the thickness where they do not tell groups apart. */
function namesOf(groups: readonly GroupSummary[]): string[] {
  const words = groups.map((g) => [g.board, g.finish].filter((word) => word !== '').join(' '));
  return groups.map(({ thickness }, index) => {
    const word = words[index] ?? '';
    const shared = words.filter((other) => other === word).length > 1;
    if (word !== '' && !shared) return shorten(word, LONGEST_NAME);
    if (thickness === 0) return shorten(word || 'board', LONGEST_NAME);
    const end = `${thickness} mm`;
    return `${shorten(word, LONGEST_NAME - end.length - 1)} ${end}`.trim();
  });
}

/** What the terminal says of one job: a line per stock group, what the figures are, and what it costs. */
export function describeJob(
  title: string,
  groups: readonly GroupSummary[],
  currency: string,
  colours: ReturnType<typeof coloursFor>,
): string {
  const panels = groups.reduce((sum, g) => sum + g.panels, 0);
  const sheets = groups.reduce((sum, g) => sum + g.sheetCount, 0);
  const names = namesOf(groups);
  const table = plainTable(
    ['stock group', 'panels', 'sheets', 'least', 'yield', 'offcuts', 'result'],
    groups.map((g, index) => [
      names[index] ?? '',
      String(g.panels),
      String(g.sheetCount),
      String(g.bound),
      percent(g.yield),
      String(g.offcuts.reduce((sum, offcut) => sum + offcut.count, 0)),
      verdict(g),
    ]),
    'lrrrrrl',
  );
  const lines = [
    colours.bold(shorten(title, 80)),
    `${counted(panels, 'panel')} from ${counted(sheets, 'sheet')} in ${counted(groups.length, 'stock group')}`,
    '',
    table,
    '',
    'yield: area of the panels as sawn, of the area of the raw sheets',
    'least: no plan takes fewer sheets; proved best: no plan costs less',
  ];
  const costs = groups.map((g) => g.cost);
  if (costs.every((cost) => cost !== null)) {
    const total = costs.reduce((sum, cost) => sum + cost, 0);
    if (total > 0) lines.push(`sheets cost ${money(total, currency)}`);
  }
  return `${lines.join('\n')}\n`;
}

const paperWords: readonly (readonly [pattern: RegExp, words: string])[] = [
  [/^cut-plans\//, 'cut plans of all sheets, and overviews'],
  [/^book\.html$/, 'job book for a tablet, to tick off'],
  [/^book\.pdf$/, 'job book for paper, A4'],
  [/^cutting-list\.csv$/, 'cutting list'],
  [/^edging-list\.csv$/, 'edging list, in working order'],
  [/^edging-to-buy\.csv$/, 'edging to buy'],
  [/^sheets-to-buy\.csv$/, 'sheets to buy'],
  [/^offcuts-kept\.csv$/, 'offcuts to keep'],
  [/^plan\.json$/, "plan file, for 'plywright replay' and other programs"],
];

/** Where the papers are, a line per kind. */
export function describePapers(
  folder: string,
  paths: readonly string[],
  colours: ReturnType<typeof coloursFor>,
): string {
  const lines = paperWords.flatMap(([pattern, words]) => {
    const found = paths.filter((path) => pattern.test(path)).sort();
    const [first] = found;
    if (first === undefined) return [];
    const shown = first.includes('/') ? `${first.slice(0, first.indexOf('/') + 1)} (${found.length})` : first;
    return [`  ${shown.padEnd(20)}  ${words}`];
  });
  return [colours.bold(`Papers in ${printable(folder)}/`), ...lines, ''].join('\n');
}
