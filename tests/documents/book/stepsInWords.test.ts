import { describe, expect, it } from 'vitest';
import { stepsInWords } from '../../../src/documents/stepsInWords.ts';
import { en } from '../../../src/documents/words/en.ts';
import type { PlanGroup, PlanSheet } from '../../../src/model/plan.ts';
import { matchedPlan, randomPlan, stripPlan } from '../../drawing/planFixtures.ts';
import { demoJob } from './demoBook.ts';

interface Piece {
  readonly length: number;
  readonly width: number;
}

/** A sawyer who knows the raw sheet and the kerf, and else only what the sentences say. Lengths in 0.1 mm. */
function sawByWords(sentences: readonly string[], sheet: Piece, kerf: number, start: string) {
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
    const trim = /^Piece (.+): trim ([\d.]+) off the (left|right|near|far) edge\. Leaves (.+)\.$/.exec(
      sentence,
    );
    const part =
      /^Piece (.+): fence ([\d.]+), (rip|crosscut|(?:rip|crosscut|recut|part) (?:along|across) the length)\. Gives (.+?)(?: and (.+))?\.$/.exec(
        sentence,
      );
    const panel = /^(\S+) is panel (\d+), [\s\S]*, ([\d.]+)\u00a0×\u00a0([\d.]+)\.$/.exec(sentence);
    const spare = /^(\S+) is (?:an offcut to keep|waste), ([\d.]+)\u00a0×\u00a0([\d.]+)\.$/.exec(sentence);
    if (sentence === 'No cut: the sheet is used as it is.') continue;
    if (trim) {
      const { length, width } = take(trim[1]!);
      const off = tenths(trim[2]!);
      const short = trim[3] === 'left' || trim[3] === 'right';
      bench.set(trim[4]!, short ? { length: length - off, width } : { length, width: width - off });
    } else if (part) {
      const { length, width } = take(part[1]!);
      const fence = tenths(part[2]!);
      // A rip runs along the length of the sheet, a crosscut across it.
      const blade = part[3] === 'rip' || part[3]!.includes(' along ');
      const rest = (blade ? width : length) - fence - kerf;
      const sized = (across: number) => (blade ? { length, width: across } : { length: across, width });
      bench.set(part[4]!, sized(fence));
      if (part[5] !== undefined) bench.set(part[5], sized(rest));
      else if (rest > 0) throw new Error(`a piece is not named: ${sentence}`);
    } else if (panel) {
      done.push({ number: Number(panel[2]), size: take(panel[1]!) });
      const said = [tenths(panel[3]!), tenths(panel[4]!)].sort((a, b) => a - b);
      const got = [done.at(-1)!.size.length, done.at(-1)!.size.width].sort((a, b) => a - b);
      if (String(said) !== String(got)) throw new Error(`${sentence} comes out as ${got}`);
    } else if (spare) {
      const { length, width } = take(spare[1]!);
      expect([length, width]).toEqual([tenths(spare[2]!), tenths(spare[3]!)]);
    } else throw new Error(`not understood: ${sentence}`);
  }
  return { done, left: [...bench.keys()] };
}

function check(group: PlanGroup, sheet: PlanSheet): void {
  const numberOf = (id: string) => group.panels.findIndex((panel) => panel.id === id) + 1;
  const steps = stepsInWords(group, sheet, numberOf, en);
  const stock = group.stock.find((one) => one.id === sheet.stock)!;
  const raw = { length: Math.round(stock.length * 10), width: Math.round(stock.width * 10) };
  const sentences = steps.flatMap((step) => [step.sentence, ...step.outcomes]);
  const { done, left } = sawByWords(sentences, raw, Math.round(group.saw.kerf * 10), sheet.start);
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
  });
});
