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

function sum(groups: readonly GroupSummary[], of: (group: GroupSummary) => number): number {
  return groups.reduce((total, group) => total + of(group), 0);
}

/** Work at the saw, also with equal sheets cut on each other where any are, and the heaviest piece to be lifted. */
function sawingLines(groups: readonly GroupSummary[]): string[] {
  const guides = new Set(groups.map(({ saw }) => saw.guidedBy));
  const settings = guides.size === 1 ? `${[...guides][0]} setting` : 'setting';
  const work = (of: (group: GroupSummary) => { cuts: number; sawnMetres: number; fenceSettings: number }) =>
    `${counted(
      sum(groups, (g) => of(g).cuts),
      'cut',
    )}, ${sum(groups, (g) => of(g).sawnMetres).toFixed(1)} m, ` +
    counted(
      sum(groups, (g) => of(g).fenceSettings),
      settings,
    );
  const turns = groups.reduce((most, group) => Math.max(most, group.turns), 0);
  const different = sum(groups, (g) => g.differentSheets);
  const heaviest = groups.reduce((most, group) => Math.max(most, group.heaviest.areaM2), 0);
  const lines = [
    `at the saw: ${work((group) => group)}`,
    `${counted(different, 'different sheet')}; no piece is turned more than ${counted(turns, 'time')}`,
  ];
  const stacks = sum(groups, (g) => g.sawings.stacks);
  if (stacks > 0) {
    lines.splice(1, 0, `with ${counted(stacks, 'stack')} of equal sheets: ${work((group) => group.sawings)}`);
  }
  const kg = groups.reduce((most, group) => Math.max(most, group.heaviest.massKg ?? 0), 0);
  lines.push(
    `largest piece after a sheet's first parting: ${heaviest.toFixed(2)} m²${kg > 0 ? `, heaviest ${kg.toFixed(1)} kg` : ''}`,
  );
  return lines;
}

const LINE_WIDTH = 80;

/** Parts after each other with commas, on as many lines as they take; all but the first are indented. */
function commaLines(parts: readonly string[]): string[] {
  const lines: string[] = [];
  parts.forEach((part, index) => {
    const text = index < parts.length - 1 ? `${part},` : part;
    const line = lines.at(-1);
    if (line !== undefined && line.length + 1 + text.length <= LINE_WIDTH)
      lines[lines.length - 1] = `${line} ${text}`;
    else lines.push(line === undefined ? text : `  ${text}`);
  });
  return lines;
}

/** What the plans obey, each saw once. */
function sawLines(groups: readonly GroupSummary[]): string[] {
  const told = groups.map(({ saw }) =>
    commaLines(
      [
        `saw: ${shorten(saw.name, 40)}`,
        `kerf ${saw.kerf}`,
        saw.firstCut === 'either' ? '' : `${saw.firstCut} first`,
        saw.turns === null ? '' : `at most ${counted(saw.turns, 'turn')}`,
        saw.longestCut === null ? '' : `no cut over ${saw.longestCut}`,
        saw.smallestPart === null || saw.smallestPart === 0 ? '' : `nothing under ${saw.smallestPart} wide`,
        saw.cuttingHeight === null ? '' : `stacks up to ${saw.cuttingHeight} high`,
      ].filter((part) => part !== ''),
    ).join('\n'),
  );
  return [...new Set(told)];
}

/** What the terminal says of one job: a line per stock group, what the figures are, and what it costs. */
export function describeJob(
  title: string,
  groups: readonly GroupSummary[],
  currency: string,
  colours: ReturnType<typeof coloursFor>,
): string {
  const panels = sum(groups, (g) => g.panels);
  const sheets = sum(groups, (g) => g.sheetCount);
  const names = namesOf(groups);
  const table = plainTable(
    ['stock group', 'panels', 'sheets', 'least', 'yield', 'offcuts', 'result'],
    groups.map((g, index) => [
      names[index] ?? '',
      String(g.panels),
      String(g.sheetCount),
      String(g.bound),
      percent(g.yield),
      String(g.offcuts.reduce((total, offcut) => total + offcut.count, 0)),
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
  if (groups.length > 0) lines.push('', ...sawingLines(groups), ...sawLines(groups));
  const costs = groups.map((g) => g.cost);
  if (costs.every((cost) => cost !== null)) {
    const total = costs.reduce((all, cost) => all + cost, 0);
    if (total > 0) lines.push(`sheets cost ${money(total, currency)}`);
  }
  return `${lines.join('\n')}\n`;
}

const paperWords: readonly (readonly [pattern: RegExp, words: string])[] = [
  [/^cut-plans\//, 'cut plans of all sheets, and overviews'],
  [/^book\.html$/, 'job book for a tablet, to tick off'],
  [/^book\.pdf$/, 'job book for paper'],
  [/^labels\.pdf$/, 'labels for panels and offcuts'],
  [/^dxf\//, 'drawings of panels and sheets for machines'],
  [/^cutting-list\.csv$/, 'cutting list'],
  [/^edging-list\.csv$/, 'edging list, in working order'],
  [/^edging-to-buy\.csv$/, 'edging to buy'],
  [/^sheets-to-buy\.csv$/, 'sheets to buy'],
  [/^saw-steps\.csv$/, 'steps of the saw'],
  [/^offcuts-kept\.csv$/, 'offcuts to keep'],
  [/^already-sawn\.csv$/, 'what is sawn already, and what becomes of it'],
  [/^drilling\.csv$/, 'holes to drill'],
  [/^fittings\.csv$/, 'fittings to buy'],
  [/^appliances\.csv$/, 'appliances that the furniture has room for'],
  [/^cautions\.txt$/, 'what to take care with'],
  [/^mass-by-unit\.csv$/, 'what each unit weighs, and where'],
  [/^lists\.xlsx$/, 'all lists in one workbook'],
  [/^plan\.json$/, "plan file, for 'plywright replay' and other programs"],
];

/** Where the papers are, a line per kind, and one for each that has no words of its own. */
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
  const others = paths.filter((path) => !paperWords.some(([pattern]) => pattern.test(path))).sort();
  for (const path of others) lines.push(`  ${printable(path)}`);
  return [colours.bold(`Papers in ${printable(folder)}/`), ...lines, ''].join('\n');
}
