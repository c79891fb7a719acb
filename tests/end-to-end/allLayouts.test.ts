import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Design } from '../../src/model/comparison.ts';
import { pageOfSweep } from '../../src/pipeline/comparisonPage.ts';
import { sweepOf } from '../../src/pipeline/sweepOrder.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { axeSource } from '../documents/book/demoBook.ts';
import { window } from '../drawing/drawingTools.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { plywright } from './plywright.ts';

/**
 * Every layout of the demonstration library in both vehicles: compared, cut with the same seed and moves, and its page, with
 * those of two sweeps, looked at in a browser.
 */
const folder = temporaryFolder();
const limits = ['--work', '0', '--json'];
/** Some twenty seconds of processor, in ms where many others work. */
const A_BUSY_MACHINE = 600_000;

interface Group {
  readonly job?: string;
  readonly board: string;
  readonly finish: string;
  readonly panels: number;
  readonly sheets: unknown;
  readonly proved: boolean;
  readonly yield: number;
  readonly sawnMetres: number;
  readonly cuts: number;
  readonly fenceSettings: number;
  readonly [figure: string]: unknown;
}

interface Told {
  readonly name: string;
  readonly groups: readonly Group[];
  readonly offcuts: { readonly count: number; readonly areaM2: number };
  readonly edgingMetres: number;
  readonly furnitureKg: number;
  readonly leftKg: number;
  readonly frontKg: number;
  readonly sawnMetres: number;
  readonly cuts: number;
  readonly fenceSettings: number;
}

let designs: readonly Told[];

function sum(values: readonly number[]): number {
  return values.reduce((total, each) => total + each, 0);
}

async function run(args: readonly string[]): Promise<string> {
  const ended = await plywright(folder, args);
  expect(ended.code, ended.stderr).toBe(0);
  return ended.stdout;
}

/** A page of an order swept over one or two parameters, of made-up figures; one point in seven cannot be built. */
function sweptPage(parameters: readonly string[], points: number): string {
  const tried = Array.from({ length: points }, (_, index) => {
    const last = String(1200 + (index % 20) + 20 * (parameters.length === 1 ? Math.floor(index / 20) : 0));
    const values = parameters.length === 1 ? [last] : [String(440 + 10 * Math.floor(index / 20)), last];
    if (index % 7 === 3)
      return { values, result: { ok: false, refused: 'the bed is wider than the van' } as const };
    const groups = [
      { board: 'ply', finish: 'grey', sheets: 9 + (index % 4), leastSheets: 9, costMinor: 90_000 },
    ];
    const figures = {
      pricedBy: 'estimate',
      currency: 'EUR',
      netMinor: 300_000 + 997 * index,
      furnitureKg: 200 + index / 10,
    };
    const design = { ...figures, groups, panels: 80, yield: 0.7 } as unknown as Design;
    return { values, result: { ok: true, design } as const };
  });
  return pageOfSweep(sweepOf(parameters, tried), 'A van', { window, sha256 }, 'en');
}

function sha256(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('base64');
}

beforeAll(async () => {
  const all = ['--layouts', 'all', '--vehicles', 'all', '--library', 'demo-van', '--out', 'designs'];
  designs = JSON.parse(await run(['compare', ...all, ...limits])).designs;
}, A_BUSY_MACHINE);

it('compares four layouts in two vehicles', () => {
  expect(designs.map(({ name }) => name)).toEqual(
    ['bench-and-boot', 'lengthways-beds', 'rear-bed', 'roof-bed-and-galley'].flatMap((layout) => [
      `${layout}-van-long`,
      `${layout}-van-short`,
    ]),
  );
});

it(
  'tells of each what cutting it tells, and what its lists have',
  async () => {
    const orders = readdirSync(join(folder, 'designs/orders')).map((file) => join('designs/orders', file));
    const cutGroups: readonly Group[] = JSON.parse(await run(['cut', ...orders, ...limits])).groups;
    for (const design of designs) {
      const cut = cutGroups.filter(({ job }) => job === design.name);
      expect(cut.length).toBeGreaterThan(4);
      const told = ({ board, finish, panels, proved, yield: share }: Group) => [
        board,
        finish,
        panels,
        proved,
        share,
      ];
      expect(design.groups.map(told)).toEqual(cut.map(told));
      const figures = (groups: readonly Group[], ...keys: readonly string[]) =>
        groups.map((group) => keys.map((key) => group[key]));
      expect(figures(design.groups, 'sheets', 'leastSheets', 'costMinor')).toEqual(
        figures(cut, 'sheetCount', 'bound', 'cost'),
      );
      expect([design.cuts, design.fenceSettings]).toEqual([
        sum(cut.map(({ cuts }) => cuts)),
        sum(cut.map(({ fenceSettings }) => fenceSettings)),
      ]);
      // Cutting tells them rounded for each group.
      expect(design.sawnMetres).toBeCloseTo(sum(cut.map(({ sawnMetres }) => sawnMetres)), 1);
      const column = (list: string, key: string) =>
        readCsv(readFileSync(join(folder, 'out', design.name, `${list}.csv`), 'utf8')).map((row) =>
          Number(row[key]),
        );
      expect(design.edgingMetres).toBeCloseTo(sum(column('edging-to-buy', 'metres to buy')), 2);
      for (const [figure, key] of [
        ['furnitureKg', 'total'],
        ['leftKg', 'left'],
        ['frontKg', 'front'],
      ] as const)
        expect(design[figure]).toBeCloseTo(sum(column('mass-by-unit', key)), 1);
      const counts = column('offcuts-kept', 'count');
      const [lengths, widths] = [column('offcuts-kept', 'length'), column('offcuts-kept', 'width')];
      expect(design.offcuts.count).toBe(sum(counts));
      expect(design.offcuts.areaM2).toBeCloseTo(
        sum(counts.map((count, index) => (count * lengths[index]! * widths[index]!) / 1e6)),
        2,
      );
    }
  },
  A_BUSY_MACHINE,
);

const browserPath = '/usr/bin/chromium';
const hasBrowser = existsSync(browserPath);
if (!hasBrowser) console.log(`pages of designs are not tried in a browser: there is no ${browserPath}`);

describe.skipIf(!hasBrowser)('pages of designs in a browser', () => {
  const pages = ['designs/comparison.html', 'curves.html', 'map.html'] as const;
  const address = (page: string) => pathToFileURL(join(folder, page)).href;
  const requests = new Set<string>();
  const errors: string[] = [];
  let browser: Browser;

  beforeAll(async () => {
    writeFileSync(join(folder, 'curves.html'), sweptPage(['width'], 200));
    writeFileSync(join(folder, 'map.html'), sweptPage(['width', 'depth'], 60));
    browser = await chromium.launch({ executablePath: browserPath, args: ['--no-sandbox', '--disable-gpu'] });
  });

  afterAll(() => browser?.close());

  async function open(path: string, width: number, colorScheme: 'light' | 'dark'): Promise<Page> {
    const context = await browser.newContext({ viewport: { width, height: 900 }, colorScheme });
    const page = await context.newPage();
    page.on('request', (request) => requests.add(request.url()));
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(address(path));
    return page;
  }

  const screens = [
    ['wide', 1600, 'light'],
    ['tablet', 800, 'dark'],
    ['phone', 390, 'light'],
    ['phone', 390, 'dark'],
  ] as const;
  it.each(pages.flatMap((path) => screens.map((screen) => [path, ...screen] as const)))(
    '%s fits a %s of %s px, %s, and passes the accessibility rules',
    async (path, _, width, colours) => {
      const page = await open(path, width, colours);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await page.evaluate(lettersTooSmall), 'px of the smallest letters of plots').toBeGreaterThan(
        8.5,
      );
      expect(await page.evaluate(textOutsidePlots)).toEqual([]);
      await page.evaluate(axeSource());
      expect(await page.evaluate(violations)).toEqual([]);
      await page.context().close();
    },
  );

  it('shows a drawing larger with the keyboard alone, within the page', async () => {
    const page = await open('designs/comparison.html', 390, 'light');
    const card = page.locator('.card').first();
    const picture = card.locator('.drawing svg');
    const before = (await picture.boundingBox())!.width;
    await card.locator('summary').focus();
    await page.keyboard.press('Enter');
    expect((await picture.boundingBox())!.width).toBeGreaterThan(3 * before);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await page.context().close();
  });

  it('asks for nothing but itself, and breaks no rule of its own', () => {
    expect(requests).toEqual(new Set(pages.map(address)));
    expect(errors).toEqual([]);
  });
});

/** Height of the smallest letters of plots as they are on the screen. */
function lettersTooSmall(): number {
  const sizes = [...document.querySelectorAll<SVGTextElement>('.plot text')].map((text) => {
    const { a, b } = text.getScreenCTM()!;
    const scale = Math.hypot(a, b);
    return Number.parseFloat(getComputedStyle(text).fontSize) * scale;
  });
  return Math.min(...sizes);
}

/** Texts of plots that are cut off by their plot's edge. */
function textOutsidePlots(): string[] {
  return [...document.querySelectorAll('.plot')].flatMap((plot) => {
    const edge = plot.getBoundingClientRect();
    return [...plot.querySelectorAll('text')].flatMap((text) => {
      const box = text.getBoundingClientRect();
      const isInside =
        box.left >= edge.left - 1 && box.right <= edge.right + 1 && box.bottom <= edge.bottom + 1;
      return isInside ? [] : [text.textContent ?? ''];
    });
  });
}

async function violations(): Promise<string[]> {
  type Axe = { run: (on: Document) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
  const result = await (globalThis as unknown as { axe: Axe }).axe.run(document);
  return result.violations.map(
    ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
  );
}
