import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { exitCodes } from '../../cli/exitCodes.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { plywright, projectFolder } from './plywright.ts';

const old = join(projectFolder, 'parts-libraries/demo-van/orders/demo-short.yaml');
const soon = ['--work', '1', '--threads', '1'];
const plan = 'out/demo-short/plan.json';
const folder = temporaryFolder();

interface Told {
  readonly panels: readonly { change: string; count: number; used: number }[];
  readonly material: readonly {
    item: string;
    id: string;
    toBuy: number;
    done: number;
    inStore: number | null;
  }[];
  readonly prices: readonly { what: string; differenceMinor: number }[];
  readonly sawn: { sheets: number; panels: number; used: number } | null;
}

async function ran(args: readonly string[]): Promise<string> {
  const run = await plywright(folder, args);
  expect(run.code, `${args.join(' ')}\n${run.stderr}`).toBe(0);
  return run.stdout;
}

beforeAll(async () => {
  const text = readFileSync(old, 'utf8')
    .replace(
      'front: { board: poplar-15, finish: warm-oak }',
      'front: { board: poplar-15, finish: light-ash }',
    )
    .replace('bed_lockers: both', 'bed_lockers: none');
  writeFileSync(join(folder, 'new.yaml'), text);
  await ran(['cut', old, ...soon]);
});

describe('plywright diff', () => {
  it('tells panels, material and price of a changed order, within 80 columns, and writes its lists', async () => {
    const said = await ran(['diff', old, 'new.yaml', '--plan', plan, ...soon, '--csv', 'changes']);
    expect(Math.max(...said.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(said).toContain('12 no longer needed');
    expect(said).toContain('warm-oak → light-ash');
    expect(said).toContain('not an invoice');
    const lists = readCsv(readFileSync(join(folder, 'changes/changed-panels.csv'), 'utf8'));
    expect(lists.filter(({ change }) => change === 'no longer needed')).toHaveLength(12);
    expect(existsSync(join(folder, 'changes/changed-material.csv'))).toBe(true);
  });

  it('says the same order is the same, with a store what is missing of it', async () => {
    await ran(['stock', 'begin']);
    const told = JSON.parse(await ran(['diff', old, old, ...soon, '--store', 'store', '--json'])) as Told;
    expect(told.panels.every(({ change }) => change === 'same')).toBe(true);
    expect(told.prices.every(({ differenceMinor }) => differenceMinor === 0)).toBe(true);
    // Nothing is in the store, so all of it is to be bought.
    for (const row of told.material) expect([row.inStore, row.toBuy > 0], row.id).toEqual([0, true]);
    expect(told.sawn).toBeNull();
  });

  it('refuses a plan of another order, and an order that there is not', async () => {
    const other = await plywright(folder, ['diff', 'new.yaml', old, '--plan', plan]);
    expect(other.code).toBe(exitCodes.wrongInput);
    expect(other.stderr).toContain('does not cut the panels');
    const none = await plywright(folder, ['diff', old, 'none.yaml']);
    expect(none.code).toBe(exitCodes.cannotReadOrWrite);
  });
});
