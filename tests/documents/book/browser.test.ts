import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeSource, bookOf, demoJob } from './demoBook.ts';

const browserPath = '/usr/bin/chromium';
const hasBrowser = existsSync(browserPath);
if (!hasBrowser) console.log(`the job book is not tried in a browser: there is no ${browserPath}`);

describe.skipIf(!hasBrowser)('the job book in a browser', () => {
  let browser: Browser;
  let folder: string;
  let address: string;
  const requests: string[] = [];
  const errors: string[] = [];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'job-book-'));
    const file = join(folder, 'book.html');
    writeFileSync(file, bookOf(demoJob()).html);
    address = pathToFileURL(file).href;
    browser = await chromium.launch({ executablePath: browserPath, args: ['--no-sandbox', '--disable-gpu'] });
  });

  afterAll(async () => {
    await browser?.close();
    if (folder !== undefined) rmSync(folder, { recursive: true });
  });

  async function open(width: number, height: number, colorScheme: 'light' | 'dark' = 'light'): Promise<Page> {
    const context = await browser.newContext({ viewport: { width, height }, colorScheme, hasTouch: true });
    const page = await context.newPage();
    page.on('request', (request) => requests.push(request.url()));
    page.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    page.on('pageerror', (error) => errors.push(error.message));
    await page.goto(address);
    return page;
  }

  it.each([
    ['tablet', 800, 1280],
    ['phone', 390, 844],
  ] as const)('fits a %s, and everything to touch is large enough', async (_, width, height) => {
    const page = await open(width, height);
    const [wide, small] = await page.evaluate(() => {
      const touched = [
        ...document.querySelectorAll<HTMLElement>(
          'button, nav a, summary, label:has(input[data-tick]), #find',
        ),
      ];
      const tooSmall = touched.filter((element) => {
        const { width: w, height: h } = element.getBoundingClientRect();
        return w > 0 && (w < 44 || h < 44);
      });
      return [
        document.documentElement.scrollWidth,
        tooSmall.map((element) => element.outerHTML.slice(0, 80)),
      ];
    });
    expect(wide).toBeLessThanOrEqual(width);
    expect(small).toEqual([]);
  });

  it('turns rows into cards on a phone, so that no table is wider than the screen', async () => {
    const page = await open(390, 844);
    const sideways = await page.evaluate(() =>
      [...document.querySelectorAll('.scroll')]
        .filter((part) => part.scrollWidth > part.clientWidth + 1)
        .map((part) => part.getAttribute('aria-label')),
    );
    expect(sideways).toEqual([]);
    const cell = page.locator('#cutting-list tbody td').nth(3);
    expect(await cell.getAttribute('data-head')).toBe('cut size');
    expect(await page.getByRole('cell', { name: 'dining table' }).count()).toBeGreaterThan(0);
  });

  it('shows drawings in full, each with a size', async () => {
    const page = await open(800, 1280);
    const sizes = await page.evaluate(() =>
      [...document.querySelectorAll('.drawing svg')].map((svg) => {
        const { width, height } = svg.getBoundingClientRect();
        return [
          width,
          height,
          svg
            .getAttribute('viewBox')!
            .split(' ')
            .every((n) => Number(n) >= 0),
        ];
      }),
    );
    expect(sizes.length).toBeGreaterThan(20);
    for (const [width, height, isPlace] of sizes) {
      expect(width).toBeGreaterThan(300);
      expect(height).toBeGreaterThan(30);
      expect(isPlace).toBe(true);
    }
  });

  it.each([
    ['light', 800],
    ['dark', 390],
  ] as const)('passes the accessibility rules, %s, %s wide', async (colours, width) => {
    const page = await open(width, 1280, colours);
    await page.evaluate(axeSource());
    const violations = await page.evaluate(async () => {
      const axe = (
        window as unknown as {
          axe: {
            run: (on: Document) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
          };
        }
      ).axe;
      const result = await axe.run(document);
      return result.violations.map(
        ({ id, nodes }) =>
          `${id}: ${nodes
            .slice(0, 3)
            .map((node) => node.html.slice(0, 120))
            .join(' | ')}`,
      );
    });
    expect(violations).toEqual([]);
  });

  it('keeps ticks over a reload and tells how far the job is', async () => {
    const page = await open(800, 1280);
    const boxes = page.locator('input[data-panel]');
    const all = await boxes.count();
    await boxes.nth(0).check();
    // In its middle stands its name, which must let the tap through.
    await page.locator('.hit').nth(1).click();
    expect(await page.locator('#progress').textContent()).toBe(`2 of ${all} done`);
    await page.reload();
    expect(await boxes.nth(0).isChecked()).toBe(true);
    expect(await page.locator('#progress').textContent()).toBe(`2 of ${all} done`);
    const number = await boxes.nth(0).getAttribute('data-panel');
    const row = page.locator(`tr[data-counts="${number}"] td`).last();
    expect(await row.textContent()).toBe('1 of 1 done');
    await page.locator('#clear').click();
    await page.locator('#clear').click();
    await page.reload();
    expect(await page.locator('#progress').textContent()).toBe(`0 of ${all} done`);
  });

  it('frames and colours panels below the numbers of the cuts', async () => {
    const page = await open(800, 1280);
    const isBelow = await page.evaluate(() =>
      [...document.querySelectorAll('.hit')].map((hit) => {
        const numbers = hit.closest('svg')!.querySelector('.numbers')!;
        return (hit.compareDocumentPosition(numbers) & Node.DOCUMENT_POSITION_FOLLOWING) !== 0;
      }),
    );
    expect(isBelow.length).toBeGreaterThan(100);
    expect(isBelow).not.toContain(false);
  });

  it('finds a panel by number and by name, with the keyboard alone', async () => {
    const page = await open(390, 844);
    await page.locator('#find').focus();
    await page.keyboard.type('7');
    expect(await page.locator('#found li').count()).toBe(1);
    await page.keyboard.press('Enter');
    const focused = page.locator('input[data-panel="7"]');
    expect(await focused.evaluate((box) => box === document.activeElement)).toBe(true);
    await page.keyboard.press('Space');
    expect(await focused.isChecked()).toBe(true);
    await page.locator('#find').fill('wardrobe');
    expect(await page.locator('#found li').count()).toBeGreaterThan(3);
    for (const text of await page.locator('#found li').allTextContents()) expect(text).toContain('wardrobe');
  });

  it('shows drawings on a phone so large that their figures are read, and in full where that is wished', async () => {
    const page = await open(390, 844);
    const svg = page.locator('#plan-1-1 .drawing svg');
    const width = async () => (await svg.boundingBox())!.width;
    const figures = await svg
      .locator('text')
      .evaluateAll((texts) => texts.map((text) => text.getBoundingClientRect().height));
    // The smallest letters are 9 px high, as those of the page below a heading are 13.
    expect(Math.min(...figures.filter((high) => high > 0))).toBeGreaterThan(8);
    const natural = await width();
    await page.locator('#plan-1-1 [data-zooms="1"]').click();
    expect(await width()).toBeGreaterThan(natural * 1.2);
    await page.locator('#plan-1-1 [data-zooms="fit"]').click();
    expect(await width()).toBeLessThan(390);
  });

  it('makes a drawing larger and turns dark', async () => {
    const page = await open(800, 1280);
    const svg = page.locator('.drawing svg').first();
    const before = (await svg.boundingBox())!.width;
    await page.locator('[data-zooms="1"]').first().click();
    expect((await svg.boundingBox())!.width).toBeGreaterThan(before * 1.5);
    const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const light = await ground();
    await page.locator('#theme').click();
    expect(await ground()).not.toBe(light);
    await page.reload();
    expect(await ground()).not.toBe(light);
  });

  it('asks for nothing but itself, and breaks no rule of its own', () => {
    expect(new Set(requests)).toEqual(new Set([address]));
    expect(errors).toEqual([]);
  });
});
