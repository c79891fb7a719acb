import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { exitCodes } from '../../cli/exitCodes.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { plywright, projectFolder } from './plywright.ts';

const orders = join(projectFolder, 'parts-libraries/demo-van/orders');
const short = join(orders, 'demo-short.yaml');
const plan = 'out/demo-short/plan.json';
const ofPlan = ['quote', short, '--plan', plan, '--date', '2026-03-02', '--replace'];

type Row = Record<string, string>;
interface Sums {
  readonly materialMinor: number;
  readonly vatMinor: number;
  readonly totalMinor: number;
}

const folder = temporaryFolder();
const papers = join(folder, 'out/demo-short');

beforeAll(async () => {
  const cut = await plywright(folder, ['cut', short, '--work', '1', '--threads', '1']);
  expect(cut.code, cut.stderr).toBe(0);
});

function rowsOf(path: string): Row[] {
  return readCsv(readFileSync(join(papers, path), 'utf8'));
}

async function sumsOf(args: readonly string[]): Promise<Sums> {
  const run = await plywright(folder, [...args, '--json']);
  expect(run.code, run.stderr).toBe(0);
  return (JSON.parse(run.stdout) as { quotations: { sums: Sums }[] }).quotations[0]!.sums;
}

const cents = (text: string) => Math.round(Number(text) * 100);

/** What the printed figures of a line come to, in units of the currency. */
function comesTo(row: Row): number {
  const figure = (key: string) => Number(row[key]);
  if (row['percent'] !== '') return (figure('base') * figure('percent')) / 100;
  const one = row['seconds'] === '' ? figure('price') : (figure('price') * figure('seconds')) / 3600;
  return figure('quantity') * one;
}

describe('plywright quote', () => {
  it('prices an order line by line, from its lists, and every sum is that of its lines', async () => {
    const told = await sumsOf(ofPlan);
    const rows = rowsOf('quotation/quotation.csv');
    const lines = rows.filter((row) => row['line'] !== '');
    for (const row of lines) {
      expect(Math.abs(comesTo(row) - Number(row['amount'])), JSON.stringify(row)).toBeLessThan(0.00501);
    }
    const sum = (own: readonly Row[]) => own.reduce((total, row) => total + cents(row['amount']!), 0);
    for (const row of rows.filter(({ section }) => section === 'sum')) {
      const [first, last = first] = row['base lines']!.split('–').map(Number) as [number, number?];
      expect(cents(row['amount']!), row['item']).toBe(sum(lines.slice(first - 1, last)));
    }
    expect(cents(rows.at(-1)!['amount']!)).toBe(told.totalMinor);
    // Each line of material is found in the papers of the cut, by the key that it names.
    const material = lines.filter(({ section }) => section === 'material');
    expect(material.length).toBeGreaterThan(10);
    for (const row of material) {
      const [list, key] = row['quantity from']!.split(': ') as [string, string];
      const listed = rowsOf(list).find((each) =>
        [each['sheet'], each['edging'], each['fitting']].includes(key),
      )!;
      if (list === 'edging-to-buy.csv') expect(row['quantity']).toBe(String(Number(listed['metres to buy'])));
      else expect(row['amount'], key).toBe(listed['price']);
    }
    const holes = rowsOf('drilling.csv').reduce((total, row) => total + Number(row['count']), 0);
    const drilled = lines.find(({ section, item }) => section === 'drilling' && item === 'hole')!;
    expect(Number(drilled['quantity'])).toBe(holes);
    expect(readFileSync(join(papers, 'quotation/quotation.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
    const share = await sumsOf([...ofPlan, '--sheets', 'share', '--vat', '0', '--language', 'de']);
    expect(share.materialMinor).toBeLessThan(told.materialMinor);
    expect([told.vatMinor > 0, share.vatMinor]).toEqual([true, 0]);
  });

  it('says the same of a plan that it searches for with the same seed, within 80 columns', async () => {
    const searched = ['quote', short, '--work', '1', '--threads', '1', '--date', '2026-03-02', '--replace'];
    const first = await plywright(folder, searched);
    expect(first.code, first.stderr).toBe(0);
    const second = await plywright(folder, ofPlan);
    expect(second.stdout).toBe(first.stdout);
    expect(first.stdout).toContain('not an invoice');
    expect(Math.max(...first.stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(existsSync(join(folder, plan))).toBe(true);
  });

  it('refuses another order’s plan and a library without rates', async () => {
    const long = join(orders, 'demo-long.yaml');
    const other = await plywright(folder, ['quote', long, '--plan', plan]);
    expect(other.code).toBe(exitCodes.wrongInput);
    expect(other.stderr).toContain('does not cut the panels');
    const bench = join(projectFolder, 'parts-libraries/workshop-bench/orders/garage-bench.yaml');
    const none = await plywright(folder, ['quote', bench]);
    expect(none.code).toBe(exitCodes.wrongInput);
    expect(none.stderr).toContain('rates.yaml');
    expect(existsSync(join(folder, 'out/garage-bench'))).toBe(false);
  });

  it('leaves a paper that a person has changed', async () => {
    const paper = join(papers, 'quotation/quotation.csv');
    writeFileSync(paper, 'mine');
    const run = await plywright(folder, ofPlan.slice(0, -1));
    expect(run.code).toBe(exitCodes.cannotReadOrWrite);
    expect(readFileSync(paper, 'utf8')).toBe('mine');
  });
});
