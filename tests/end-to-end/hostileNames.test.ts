import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { JSDOM } from 'jsdom';
import { chromium } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { disarmedCell, plainCell } from '../../src/basics/csvCells.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { sheetList, writeFiles } from './lists.ts';
import { type Ended, plywright, projectFolder } from './plywright.ts';

/** Names that a person would hardly give, each of which some program has once taken for something else. */
const hostile = [
  '<script>document.title="ran"</script>',
  '"><img src=x onerror=alert(1)>',
  "'><svg/onload=alert(1)>",
  '</script></style></title><script>alert(1)</script>',
  'javascript:alert(1)',
  ']]><!-- &lt;b&gt; &#x3c;i&#x3e;',
  '=HYPERLINK("http://127.0.0.1/")',
  '+SUM(A1)',
  '-2+3',
  '@SUM(A1)',
  "'=1",
  'a;=1+1',
  '../../up',
  '/absolute',
  'C:\\drive',
  'CON',
  'trailing...',
  '_x0041_',
  '%%d %s `id` $(id)',
  'שולחן 600 × 400',
  'ku\u0308che',
  '引き出し🚐',
];
const ADDED = '<img src=x onerror=alert(2)>';
const TITLE = '</title><script>document.title="ran"</script> =1+1';

const folder = temporaryFolder();
const few = ['--work', '1', '--threads', '1'];
const runs: Ended[] = [];

/** The bench library with markup in every title, a unit under a hostile name, and a list of hostile panels. */
beforeAll(async () => {
  const library = join(folder, 'bench');
  cpSync(join(projectFolder, 'parts-libraries/workshop-bench'), library, { recursive: true });
  for (const file of readdirSync(library, { recursive: true }).map(String)) {
    if (!file.endsWith('.yaml')) continue;
    const text = readFileSync(join(library, file), 'utf8');
    writeFileSync(
      join(library, file),
      text
        .replace(/^( *)title: .*$/gm, `$1title: '"><script>alert("${basename(file)}")</script>'`)
        .replace(/\{ title: [^,]*,/g, `{ title: '=<b onclick=alert(3)>', `),
    );
  }
  const order = readFileSync(join(library, 'orders/garage-bench.yaml'), 'utf8')
    .replace(/^title: .*$/m, `title: ${JSON.stringify(TITLE)}\nstart: 2026-05-04`)
    .replace('library: workshop-bench', 'library: ./bench')
    .replace(
      'changes:\n',
      `changes:\n  - { add: crate, as: ${JSON.stringify(ADDED)}, at: { x: 100, y: 1500, z: 0 }, facing: front }\n`,
    );
  const rows = hostile.map((name, n) => `"${name.replaceAll('"', '""')}",${500 + n},300,1,"${ADDED}"`);
  writeFiles(folder, {
    'order.yaml': order,
    'list.csv': `name,length,width,count,unit\r\n${rows.join('\r\n')}\r\n`,
    'sheets.csv': sheetList,
  });
  for (const args of [
    ['cut', 'order.yaml', '--papers', 'book', ...few],
    ['cut', '--panels', 'list.csv', '--sheets', 'sheets.csv', '--papers', 'all', ...few],
    [
      'compare',
      'order.yaml',
      '--vary',
      'wall_shelves=1,2',
      '--out',
      'out/designs',
      '--cache',
      'kept',
      ...few,
    ],
    ['sweep', 'order.yaml', '--vary', 'wall_shelves=1,2', '--out', 'out/swept', '--cache', 'kept', ...few],
  ]) {
    const run = await plywright(folder, args);
    expect(run.code, run.stderr + run.stdout).toBe(0);
    runs.push(run);
  }
}, 300_000);

function papers(ending: string): string[] {
  return readdirSync(join(folder, 'out'), { recursive: true })
    .map((file) => join(folder, 'out', String(file)))
    .filter((file) => file.endsWith(ending))
    .sort();
}

describe('names that are markup', () => {
  it('are text on every page, which forbids all but its own style and script', () => {
    const pages = papers('.html');
    expect(pages.map((page) => basename(page))).toEqual([
      'comparison.html',
      'book.html',
      'book.html',
      'sweep.html',
    ]);
    for (const page of pages) {
      const html = readFileSync(page, 'utf8');
      const { document } = new JSDOM(html).window;
      const policies = [...document.querySelectorAll('meta[http-equiv="Content-Security-Policy"]')];
      expect(policies.map((each) => each.getAttribute('content'))).toEqual([
        expect.stringMatching(
          /^default-src 'none'; style-src 'sha256-[\w+/]+={0,2}'; .*base-uri 'none'; form-action 'none'$/,
        ),
      ]);
      // Nothing but the character set may stand before the policy, since it holds only for what follows.
      expect(policies[0]!.previousElementSibling?.outerHTML).toBe('<meta charset="utf-8">');
      const isBook = page.endsWith('book.html');
      expect(document.querySelectorAll('script')).toHaveLength(isBook ? 2 : 0);
      const others = document.querySelectorAll(
        'img, iframe, object, embed, link, form:not(#search), base, [style]',
      );
      expect([...others].map(({ outerHTML }) => outerHTML.slice(0, 80))).toEqual([]);
      for (const element of document.querySelectorAll('*')) {
        for (const { name, value } of element.attributes) {
          expect(name).not.toMatch(/^on/i);
          if (/^(?:xlink:)?href$|^src$|^action$/i.test(name)) expect(value).toMatch(/^#/);
        }
      }
      expect(document.body.textContent).toContain(page.includes('list') ? hostile[0] : '<script>');
    }
  });

  it('are text in every drawing, which has neither script nor reference', () => {
    const drawings = papers('.svg');
    expect(drawings.length).toBeGreaterThan(8);
    for (const drawing of drawings) {
      const { document } = new JSDOM(readFileSync(drawing, 'utf8'), { contentType: 'image/svg+xml' }).window;
      const names = new Set([...document.querySelectorAll('*')].map(({ localName }) => localName));
      const plain = ['svg', 'title', 'desc', 'g', 'rect', 'path', 'line', 'polygon', 'circle', 'text'];
      for (const name of names) expect(plain, drawing).toContain(name);
      for (const element of document.querySelectorAll('*')) {
        for (const { name } of element.attributes) expect(name).not.toMatch(/^on|href|^style$/i);
      }
    }
  });

  const browserPath = '/usr/bin/chromium';
  const hasBrowser = existsSync(browserPath);
  if (!hasBrowser) console.log(`pages are not opened in a browser: there is no ${browserPath}`);

  it.skipIf(!hasBrowser)('run nothing in a browser, and ask for nothing', async () => {
    const browser = await chromium.launch({
      executablePath: browserPath,
      args: ['--no-sandbox', '--disable-gpu'],
    });
    try {
      const page = await browser.newPage();
      const told: string[] = [];
      page.on('console', (message) => told.push(message.text()));
      page.on('pageerror', (error) => told.push(error.message));
      page.on('dialog', (dialog) => {
        told.push(`dialog ${dialog.message()}`);
        void dialog.dismiss();
      });
      page.on('request', (request) => {
        if (request.url() !== address) told.push(request.url());
      });
      let address = '';
      for (const file of [...papers('.html'), ...papers('.svg').slice(0, 12)]) {
        address = pathToFileURL(file).href;
        await page.goto(address);
        expect(await page.title()).not.toBe('ran');
      }
      expect(told).toEqual([]);
    } finally {
      await browser.close();
    }
  });
});

describe('names that are formulas', () => {
  it('begin none in a list, and a program gets them back', () => {
    const written = readFileSync(join(folder, 'out/list/cutting-list.csv'), 'utf8');
    const names = readCsv(written).map((row) => row['name']!);
    expect(names.map(plainCell).sort()).toEqual(
      hostile.map((name) => plainCell(name.normalize('NFC'))).sort(),
    );
    for (const list of papers('.csv')) {
      for (const row of readCsv(readFileSync(list, 'utf8'))) {
        for (const cell of Object.values(row)) expect(disarmedCell(plainCell(cell!))).toBe(cell);
      }
    }
  });
});

describe('names that are paths', () => {
  it('make no file outside, and none that some system could not hold', () => {
    expect(readdirSync(folder).sort()).toEqual([
      'bench',
      'kept',
      'list.csv',
      'order.yaml',
      'out',
      'sheets.csv',
    ]);
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['designs', 'list', 'order', 'swept']);
    for (const file of papers('')) {
      expect(basename(file)).toMatch(
        /^(?:\.plywright\.json|(?!(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$))[a-z0-9][a-z0-9._-]{0,120})$/,
      );
      expect(basename(file)).not.toMatch(/[. ]$/);
    }
  });

  const files: [string, string][] = [
    ['CON.csv', 'con-'],
    [`${'long '.repeat(40)}.csv`, `${'long-'.repeat(15)}long`],
    ['\u202egnp.csv', 'gnp'],
    ['a\u001b[31mred.csv', 'a-31mred'],
  ];
  it.each(files)('a list in %j gets the folder %s', async (file, name) => {
    writeFileSync(join(folder, file), 'name,length,width\ndoor,500,300\n');
    const lists = [`--panels=${file}`, '--sheets', 'sheets.csv', '--out', 'named'];
    const run = await plywright(folder, ['cut', ...lists, '--work', '1', '--threads', '1']);
    expect(run.code, run.stderr).toBe(0);
    expect(readdirSync(join(folder, 'named'))).toContain(name);
    expectPlain(run);
  });

  it('an order is refused under a name that could not be its papers’', async () => {
    for (const file of ['\u202egnp.yaml', 'a\u001b[31mred.yaml']) {
      writeFileSync(join(folder, file), readFileSync(join(folder, 'order.yaml')));
      const run = await plywright(folder, ['check', file]);
      expect(run.code).toBe(1);
      expect(run.stdout).toMatch(/cannot be used as the name of an\s+order/);
      expectPlain(run);
    }
  });
});

/** Nothing that acts on a terminal, or that hides or turns a part of what is printed. */
function expectPlain({ stdout, stderr }: Ended): void {
  expect(stdout + stderr).not.toMatch(/(?![\n])[\p{Cc}\p{Bidi_Control}\p{Default_Ignorable_Code_Point}]/u);
}

describe('names on a terminal and for machines', () => {
  it('act on no terminal', () => {
    for (const run of runs) expectPlain(run);
  });

  it('are plain letters for a machine, and escaped where a sign means something to it', () => {
    const files = papers('.dxf');
    expect(files.length).toBeGreaterThan(hostile.length);
    for (const file of files) expect(readFileSync(file, 'latin1')).toMatch(/^[\r\n\u0020-\u007e]*$/);
    const all = files.map((file) => readFileSync(file, 'latin1')).join('');
    expect(all).toContain('%%%%%%d');
  });

  it('keep figures beside letters that are read from right to left in their order', () => {
    const plans = papers('.svg')
      .filter((file) => file.includes('/list/'))
      .map((file) => readFileSync(file, 'utf8'));
    const beside = plans.join('').match(/<text[^>]*>[^<]*שולחן[^<]*/g)!;
    expect(beside.length).toBeGreaterThan(0);
    for (const text of beside) expect(text).toContain('\u2068שולחן\u2069');
  });
});
