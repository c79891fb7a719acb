import { describe, expect, it } from 'vitest';
import { careInWords, stepsInWords } from '../../../src/documents/stepsInWords.ts';
import { de } from '../../../src/documents/words/de.ts';
import { en } from '../../../src/documents/words/en.ts';
import type { Words } from '../../../src/documents/words/words.ts';
import type { PlanGroup, PlanSheet } from '../../../src/model/plan.ts';
import type { CutGuide } from '../../../src/model/stock.ts';
import { matchedPlan, randomPlan, stripPlan } from '../../drawing/planFixtures.ts';
import { demoJob } from './demoBook.ts';

interface Piece {
  readonly length: number;
  readonly width: number;
}

const setting = { en: { fence: 'fence', rail: 'rail at' }, de: { fence: 'Anschlag', rail: 'Schiene bei' } };

/** What the sentences of a language look like for a saw that is guided in this way; groups are the same in all. */
const grammar = {
  en: (guide: CutGuide) => ({
    whole: 'No cut: the sheet is used as it is.',
    trim: /^Piece (?<piece>.+): trim (?<take>[\d.]+) off the (?<side>left|right|near|far) edge\. Leaves (?<leaves>.+)\.$/,
    part: new RegExp(
      `^Piece (?<piece>.+): ${setting.en[guide]} (?<setting>[\\d.]+), (?<cut>rip|crosscut|(?:rip|crosscut|recut|part) (?:along|across) the length)(?:, only (?<shaved>[\\d.]+) comes off)?\\. Gives (?<first>.+?)(?: and (?<rest>.+))?\\.$`,
    ),
    panel: /^(?<piece>\S+) is panel (?<number>\d+), [\s\S]*, (?<x>[\d.]+)\u00a0×\u00a0(?<y>[\d.]+)\.$/,
    spare: /^(?<piece>\S+) is (?:an offcut to keep|waste), (?<x>[\d.]+)\u00a0×\u00a0(?<y>[\d.]+)\.$/,
    shortSides: ['left', 'right'],
    along: /^rip$| along /,
  }),
  de: (guide: CutGuide) => ({
    whole: 'Kein Schnitt: die Platte wird ganz verwendet.',
    trim: /^Stück (?<piece>.+): an der (?<side>linken|rechten|vorderen|hinteren) Kante (?<take>[\d.]+) besäumen\. Bleibt (?<leaves>.+)\.$/,
    part: new RegExp(
      `^Stück (?<piece>.+): ${setting.de[guide]} (?<setting>[\\d.]+), (?<cut>Längsschnitt|Querschnitt|(?:Längs|Quer|Nach|Trenn)schnitt (?:längs der|quer zur) Platte)(?:, nur (?<shaved>[\\d.]+) fällt weg)?\\. Ergibt (?<first>.+?)(?: und (?<rest>.+))?\\.$`,
    ),
    panel: /^(?<piece>\S+) ist Teil (?<number>\d+), [\s\S]*, (?<x>[\d.]+)\u00a0×\u00a0(?<y>[\d.]+)\.$/,
    spare: /^(?<piece>\S+) ist (?:ein Reststück fürs Lager|Abfall), (?<x>[\d.]+)\u00a0×\u00a0(?<y>[\d.]+)\.$/,
    shortSides: ['linken', 'rechten'],
    along: /^Längsschnitt$| längs der /,
  }),
} as const;

/** A sawyer who knows the raw sheet and the kerf, and else only what the sentences say. Lengths in 0.1 mm. */
function sawByWords(
  sentences: readonly string[],
  says: ReturnType<(typeof grammar)['en' | 'de']>,
  sheet: Piece,
  kerf: number,
  start: string,
) {
  const bench = new Map<string, Piece>([[start, sheet]]);
  const done: { number: number; size: Piece }[] = [];
  const take = (name: string): Piece => {
    const piece = bench.get(name);
    if (piece === undefined) throw new Error(`no piece ${name} on the bench`);
    bench.delete(name);
    return piece;
  };
  const tenths = (text: string) => Math.round(Number(text) * 10);
  for (const sentence of sentences) {
    if (sentence === says.whole) continue;
    const trim = says.trim.exec(sentence)?.groups;
    const part = says.part.exec(sentence)?.groups;
    const panel = says.panel.exec(sentence)?.groups;
    const spare = says.spare.exec(sentence)?.groups;
    if (trim) {
      const { length, width } = take(trim['piece']!);
      const off = tenths(trim['take']!);
      const short = says.shortSides.some((side) => side === trim['side']);
      bench.set(trim['leaves']!, short ? { length: length - off, width } : { length, width: width - off });
    } else if (part) {
      const { length, width } = take(part['piece']!);
      const measured = tenths(part['setting']!);
      // A rip runs along the length of the sheet, a crosscut across it.
      const blade = says.along.test(part['cut']!);
      const rest = (blade ? width : length) - measured - kerf;
      const sized = (across: number) => (blade ? { length, width: across } : { length: across, width });
      bench.set(part['first']!, sized(measured));
      if (part['rest'] !== undefined) bench.set(part['rest'], sized(rest));
      else if (rest > 0) throw new Error(`a piece is not named: ${sentence}`);
      // Where the blade has less than its width before it, the sentence says how much.
      const shaved = part['shaved'];
      expect(shaved === undefined ? null : tenths(shaved), sentence).toBe(rest < 0 ? kerf + rest : null);
    } else if (panel) {
      done.push({ number: Number(panel['number']), size: take(panel['piece']!) });
      const said = [tenths(panel['x']!), tenths(panel['y']!)].sort((a, b) => a - b);
      const got = [done.at(-1)!.size.length, done.at(-1)!.size.width].sort((a, b) => a - b);
      if (String(said) !== String(got)) throw new Error(`${sentence} comes out as ${got}`);
    } else if (spare) {
      const { length, width } = take(spare['piece']!);
      expect([length, width]).toEqual([tenths(spare['x']!), tenths(spare['y']!)]);
    } else throw new Error(`not understood: ${sentence}`);
  }
  return { done, left: [...bench.keys()] };
}

const languages: readonly [keyof typeof grammar, Words][] = [
  ['en', en],
  ['de', de],
];

/** Saws a sheet by its steps in both languages, as they are for a fence and for a rail. */
function check(made: PlanGroup, sheet: PlanSheet): void {
  for (const guidedBy of ['fence', 'rail'] as const) {
    const group = { ...made, saw: { ...made.saw, guidedBy } };
    for (const [language, words] of languages) checkSaid(group, sheet, words, grammar[language](guidedBy));
  }
}

function checkSaid(
  group: PlanGroup,
  sheet: PlanSheet,
  words: Words,
  says: Parameters<typeof sawByWords>[1],
): void {
  const numberOf = (id: string) => group.panels.findIndex((panel) => panel.id === id) + 1;
  const steps = stepsInWords(group, sheet, numberOf, words);
  const stock = group.stock.find((one) => one.id === sheet.stock)!;
  const raw = { length: Math.round(stock.length * 10), width: Math.round(stock.width * 10) };
  const sentences = steps.flatMap((step) => [step.sentence, ...step.outcomes]);
  const { done, left } = sawByWords(
    sentences,
    says,
    raw,
    Math.round(group.saw.kerf * 10),
    words.drawings.cutPlan.piece(sheet.start),
  );
  const wanted = sheet.pieces.flatMap((piece) => {
    if (piece.is !== 'panel') return [];
    const panel = group.panels.find((one) => one.id === piece.panel)!;
    const size = [Math.round(panel.length * 10), Math.round(panel.width * 10)];
    if (piece.lengthAlong === 'width') size.reverse();
    return [`${numberOf(panel.id)}: ${size.join(' × ')}`];
  });
  expect(done.map(({ number, size }) => `${number}: ${size.length} × ${size.width}`).sort()).toEqual(
    wanted.sort(),
  );
  expect(left).toEqual([]);
}

describe('steps in words, read back and sawn', () => {
  it('give the panels of a sheet in strips', () => {
    const { group, sheet } = stripPlan([
      { name: 'left side', size: [720, 560] },
      { name: 'right side', size: [720, 560] },
      { name: 'shelf', size: [564, 540] },
    ]);
    check(group, sheet);
  });

  it('give matched fronts parted from their blank', () => {
    const { group, sheet } = matchedPlan();
    check(group, sheet);
  });

  it('give the panels of sheets sawn at random, hostile names and all', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { group, sheet } = randomPlan(seed);
      check(group, sheet);
    }
  });

  it('give every panel of the demonstration order', () => {
    for (const group of demoJob().proven.plan.groups) for (const sheet of group.sheets) check(group, sheet);
  });

  it('are not understood when a figure is wrong', () => {
    const { group, sheet } = stripPlan([{ name: 'side', size: [720, 560] }]);
    const rip = sheet.steps.find((step) => step.cut !== 'trim')!;
    const wrong = sheet.steps.map((step) => (step === rip ? { ...rip, fence: rip.fence + 0.1 } : step));
    expect(() => check(group, { ...sheet, steps: wrong })).toThrow();
  });

  it('part no name of a piece at the end of a line', () => {
    const group = demoJob().proven.plan.groups[0]!;
    const sentences = stepsInWords(group, group.sheets[0]!, () => 1, en).map(({ sentence }) => sentence);
    expect(sentences.some((sentence) => sentence.includes('Leaves sheet\u00a01.'))).toBe(true);
    expect(sentences.filter((sentence) => /sheet \d/.test(sentence))).toEqual([]);
  });

  it('ask for a push stick below 150 mm at the fence', () => {
    const { group, sheet } = stripPlan([{ name: 'rail', size: [720, 149.9] }]);
    const steps = stepsInWords(group, sheet, () => 1, en);
    expect(steps.some((step) => step.pushStick && step.sentence.includes('fence 149.9'))).toBe(true);
    expect(steps.flatMap((step) => careInWords(step, en) ?? [])).toContain('Push stick.');
  });

  it('ask for support of the rail, and for no push stick, where a saw on a rail takes off less than 200 mm', () => {
    const { group, sheet } = stripPlan([{ name: 'bar', size: [720, 199.9] }]);
    group.saw.guidedBy = 'rail';
    const steps = stepsInWords(group, sheet, () => 1, en);
    const narrow = steps.filter(({ sentence }) => sentence.includes('rail at 199.9'));
    expect(narrow.map((step) => careInWords(step, en))).toEqual(['Support the rail.']);
    expect(narrow.map((step) => careInWords(step, de))).toEqual(['Schiene unterlegen.']);
    expect(steps.filter((step) => step.pushStick)).toEqual([]);
    const wide = stripPlan([{ name: 'bar', size: [720, 200] }]);
    wide.group.saw.guidedBy = 'rail';
    expect(stepsInWords(wide.group, wide.sheet, () => 1, en).map((step) => careInWords(step, en))).toEqual(
      wide.sheet.steps.map(() => null),
    );
  });
});
