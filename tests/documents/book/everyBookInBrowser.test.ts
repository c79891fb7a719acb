import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoOrders, plannedOrder } from '../../helpers/demoPlan.ts';
import { axeSource, bookOf } from './demoBook.ts';

const browserPath = '/usr/bin/chromium';
const hasBrowser = existsSync(browserPath);
if (!hasBrowser)
  console.log(`the job books of all orders are not tried in a browser: there is no ${browserPath}`);

/** Each book takes some ten seconds: one is opened in every run, all of them with `PLYWRIGHT_BOOKS=all`. */
const books = demoOrders.map((name, index) => [name, index % 2 === 0 ? 'en' : 'de'] as const);
const triedBooks = process.env.PLYWRIGHT_BOOKS === 'all' ? books : books.slice(-1);

/** Run in the page: texts that lie on each other, and what is cut off by the sides of the page. */
function faults(width: number): string[] {
  const found: string[] = [];
  const texts: { text: string; of: Element; box: DOMRect }[] = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const range = document.createRange();
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const parent = node.parentElement!;
    const text = node.textContent!.trim();
    if (text === '' || parent.closest('svg, script, style') || !parent.checkVisibility()) continue;
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      // What is there for screen readers alone stands far to the left.
      if (box.width > 0 && box.height > 0 && box.right > 0) texts.push({ text, of: parent, box });
    }
  }
  for (const { text, box, of } of texts) {
    if (box.right > width + 0.5 || box.left < -0.5)
      found.push(`outside: ${text} in ${of.outerHTML.slice(0, 60)}`);
  }
  for (const element of document.querySelectorAll('.scroll, button, input, summary, .drawing')) {
    const box = element.getBoundingClientRect();
    if (box.width > 0 && (box.right > width + 0.5 || box.left < -0.5)) {
      found.push(`outside: ${element.outerHTML.slice(0, 80)}`);
    }
  }
  for (const element of document.querySelectorAll('.scroll')) {
    if (element.scrollWidth > element.clientWidth + 1) {
      found.push(`wider than its place: ${element.getAttribute('aria-label')}`);
    }
  }
  texts.sort((a, b) => a.box.top - b.box.top);
  texts.forEach((one, index) => {
    for (let at = index + 1; at < texts.length; at++) {
      const other = texts[at]!;
      if (other.box.top >= one.box.bottom - 2) break;
      const wide = Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
      const high = Math.min(one.box.bottom, other.box.bottom) - other.box.top;
      if (wide > 1 && high > 4) found.push(`${one.text} on ${other.text}`);
    }
  });
  return found;
}

describe.skipIf(!hasBrowser)('the job book of every order in a browser', () => {
  let browser: Browser;
  let folder: string;

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'job-books-'));
    browser = await chromium.launch({ executablePath: browserPath, args: ['--no-sandbox', '--disable-gpu'] });
  });

  afterAll(async () => {
    await browser?.close();
    if (folder !== undefined) rmSync(folder, { recursive: true });
  });

  it.each(triedBooks)(
    'of %s, in %s, is whole on a tablet and on a phone, and passes the accessibility rules',
    async (name, language) => {
      const file = join(folder, `${name}.html`);
      writeFileSync(file, bookOf(plannedOrder(name), { language }).html);
      const address = pathToFileURL(file).href;
      const context = await browser.newContext({ viewport: { width: 820, height: 1180 }, hasTouch: true });
      const page = await context.newPage();
      const requests: string[] = [];
      const errors: string[] = [];
      page.on('request', (request) => requests.push(request.url()));
      page.on('pageerror', (error) => errors.push(error.message));
      await page.goto(address);
      await page.evaluate(axeSource());
      for (const [width, height] of [
        [820, 1180],
        [390, 844],
      ] as const) {
        await page.setViewportSize({ width, height });
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide, `${width}`).toBeLessThanOrEqual(width);
        expect(await page.evaluate(faults, width), `${width}`).toEqual([]);
        // On a tablet, and with colours and what is in drawings, one book is tried: that takes most of the time.
        if (width > 400) continue;
        const violations = await page.evaluate(async () => {
          const axe = (
            window as unknown as {
              axe: {
                run: (
                  on: object,
                  how: object,
                ) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
              };
            }
          ).axe;
          const result = await axe.run(
            { exclude: [['svg']] },
            { rules: { 'color-contrast': { enabled: false } } },
          );
          return result.violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html.slice(0, 120)}`);
        });
        expect(violations, `${width}`).toEqual([]);
      }
      expect(requests).toEqual([address]);
      expect(errors).toEqual([]);
      await context.close();
    },
    // A browser beside other work takes its time.
    180_000,
  );
});
