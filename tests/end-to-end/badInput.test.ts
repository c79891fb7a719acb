import {
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { panelList, sheetList, writeFiles } from './lists.ts';
import { type Ended, plywright, projectFolder } from './plywright.ts';

const demoOrder = readFileSync(join(projectFolder, 'parts-libraries/demo-van/orders/demo-long.yaml'), 'utf8');

/** A folder with a copy of the demo library and one order, each file changed as the test wants. */
function folderWithOrder(change: (order: string) => string): string {
  const folder = temporaryFolder();
  cpSync(join(projectFolder, 'parts-libraries'), join(folder, 'parts-libraries'), { recursive: true });
  const changed = change(demoOrder);
  expect(changed).not.toBe(demoOrder);
  writeFiles(folder, { 'my-order.yaml': changed });
  return folder;
}

/** What holds for every refusal: no stack, no colours, nothing on standard output, nothing written. */
function expectRefused(run: Ended, code: number, folder: string): void {
  expect(run.code, run.stderr).toBe(code);
  expect(run.stdout).toBe('');
  expect(run.stderr).not.toMatch(/\n\s+at .+:\d+:\d+/);
  expect(run.stderr).not.toContain('\u001b');
  expect(run.stderr).not.toContain('has a fault');
  expect(readdirSync(folder)).not.toContain('out');
}

describe('an order with something wrong in it', () => {
  it.each<[string, (order: string) => string, string[]]>([
    [
      'a wrong word',
      (o) => o.replace('finish: slate', 'finish: slat'),
      ['my-order.yaml:16', 'roles › worktop › finish', 'slat', 'nearest: slate'],
    ],
    [
      'an unknown field',
      (o) => o.replace('vehicle:', 'vehikle:'),
      ['my-order.yaml:6', 'vehikle', 'nearest: vehicle'],
    ],
    ['a wrong type', (o) => o.replace('count: 1', 'count: many'), ['my-order.yaml:8', 'count', 'many']],
    [
      'a library that is not there',
      (o) => o.replace('library: demo-van', 'library: demo-wan'),
      ['There is no library', 'nearest: demo-van'],
    ],
    [
      'a number out of range',
      (o) => o.replace('bed_width: 1250', 'bed_width: 12500'),
      ['my-order.yaml:10', 'bed_width'],
    ],
    [
      'a negative size',
      (o) => o.replace('bed_width: 1250', 'bed_width: -1250'),
      ['my-order.yaml:10', 'bed_width'],
    ],
    [
      'a division by zero',
      (o) => o.replace('bed_width: 1250', 'bed_width: 1250 / 0'),
      ['my-order.yaml:10', 'zero'],
    ],
    [
      'a formula that runs nothing',
      (o) => o.replace('bed_width: 1250', 'bed_width: "process.exit(7)"'),
      ['my-order.yaml:10'],
    ],
    ['a file that is no YAML', (o) => o.replace('choices:', 'choices: ]'), ['my-order.yaml:9']],
    [
      'a bomb of aliases',
      (o) => {
        const line = (n: number) =>
          `b${n}: &b${n} [${Array(9)
            .fill(`*b${n - 1}`)
            .join(', ')}]`;
        return `b0: &b0 [x, x, x]\n${Array.from({ length: 12 }, (_, n) => line(n + 1)).join('\n')}\n${o}`;
      },
      ['my-order.yaml'],
    ],
    ['a name twice', (o) => `${o}\ntitle: again\n`, ['my-order.yaml:2', 'title']],
  ])('is refused in words: %s', async (_, change, words) => {
    const folder = folderWithOrder(change);
    const run = await plywright(folder, ['cut', 'my-order.yaml']);
    expectRefused(run, run.stderr.includes('no library') ? 4 : 1, folder);
    for (const word of words) expect(run.stderr).toContain(word);
  });

  it('hears of all its errors at once', async () => {
    const folder = folderWithOrder((o) =>
      o.replace('finish: slate', 'finish: slat').replace('vehicle: van-long', 'vehicle: van-lang'),
    );
    const run = await plywright(folder, ['check', 'my-order.yaml']);
    expect(run.code).toBe(1);
    expect(run.stdout).toContain('nearest: slate');
    expect(run.stdout).toContain('nearest: van-long');
  });

  it('hears of formulas that need each other, by name', async () => {
    const folder = folderWithOrder((o) => o.replace('count: 1', 'count: 2'));
    const file = join(folder, 'parts-libraries/demo-van/units/base-cupboard.yaml');
    writeFileSync(
      file,
      readFileSync(file, 'utf8').replace('names:\n', 'names:\n  one: other + 1\n  other: one - 1\n'),
    );
    const run = await plywright(folder, ['cut', 'my-order.yaml']);
    expectRefused(run, 1, folder);
    expect(run.stderr).toMatch(/one.*other|other.*one/);
    expect(run.stderr).toContain('units/base-cupboard.yaml');
  });

  it('does not read what a link in the library points to outside it', async () => {
    const folder = folderWithOrder((o) => o.replace('count: 1', 'count: 2'));
    writeFiles(folder, { 'secret.yaml': 'secret: yes' });
    symlinkSync('../../../secret.yaml', join(folder, 'parts-libraries/demo-van/units/secret.yaml'));
    const run = await plywright(folder, ['cut', 'my-order.yaml']);
    expectRefused(run, 4, folder);
    expect(run.stderr).toContain('leads out of the library');
  });
});

describe('files that cannot be read', () => {
  it('are named, with the nearest that can', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, { 'my-order.yaml': 'title: x', 'panels.csv': panelList, 'sheets.csv': sheetList });
    mkdirSync(join(folder, 'folder.yaml'));
    writeFileSync(join(folder, 'large.csv'), '');
    truncateSync(join(folder, 'large.csv'), 100_000_000);
    for (const [args, words] of [
      [
        ['cut', 'my-ordre.yaml'],
        ['my-ordre.yaml', 'There is no such file', 'my-order.yaml'],
      ],
      [['cut', 'folder.yaml'], ['This is a folder, not a file']],
      [
        ['cut', '--panels', 'large.csv', '--sheets', 'sheets.csv'],
        ['large.csv', 'too large', '100 MB'],
      ],
      [['replay', 'large.csv'], ['too large']],
      [['panels', 'none.yaml'], ['There is no such file']],
      [['check', 'none.yaml'], ['There is no such file']],
      [['list', '--library', 'nowhere'], ['There is no library']],
    ] as const) {
      const run = await plywright(folder, args);
      const said = run.stdout + run.stderr;
      expect(run.code, said).toBe(4);
      for (const word of words) expect(said).toContain(word);
      expect(said).not.toMatch(/\n\s+at .+:\d+:\d+/);
    }
    expect(readdirSync(folder)).not.toContain('out');
  });
});

describe('a list with something wrong in it', () => {
  const cases: [string, string, string, string[]][] = [
    [
      'a panel larger than every sheet',
      'name,length,width\nbig,3000,1500\n',
      sheetList,
      ['big', '3000', '1500'],
    ],
    [
      'too few sheets',
      'name,length,width,count\np,2000,1000,5\n',
      'length,width,count\n2500,1250,2\n',
      ['run out', '3 panels'],
    ],
    ['a negative size', 'name,length,width\np,-5,100\n', sheetList, ['panels.csv:2', 'length', 'negative']],
    ['a size of zero', 'name,length,width\np,0,100\n', sheetList, ['panels.csv:2', 'length']],
    ['a word for a size', 'name,length,width\np,long,100\n', sheetList, ['panels.csv:2', 'long']],
    ['a column spelt wrongly', 'name,lenght,width\np,1,1\n', sheetList, ['lenght', 'length']],
    ['a quote that is never closed', 'name,length,width\n"p,100,100\n', sheetList, ['panels.csv']],
    ['nothing in it', '', sheetList, ['panels.csv']],
    ['a control character', 'name,length,width\n"\u001b[31mred",100,100\n', sheetList, ['panels.csv:2']],
    ['half a panel', 'name,length,width,count\np,100,100,1.5\n', sheetList, ['panels.csv:2', 'count', '1.5']],
  ];
  it.each(cases)('is refused in words: %s', async (_, panels, sheets, words) => {
    const folder = temporaryFolder();
    writeFiles(folder, { 'panels.csv': panels, 'sheets.csv': sheets });
    const run = await plywright(folder, ['cut', '--panels', 'panels.csv', '--sheets', 'sheets.csv']);
    expectRefused(run, 1, folder);
    for (const word of words) expect(run.stderr).toContain(word);
  });

  it('tells programs the same with --json', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, { 'panels.csv': 'name,length,width\np,-5,100\n', 'sheets.csv': sheetList });
    const run = await plywright(folder, [
      'cut',
      '--panels',
      'panels.csv',
      '--sheets',
      'sheets.csv',
      '--json',
    ]);
    expect(run.code).toBe(1);
    expect(JSON.parse(run.stdout)).toMatchObject({
      ok: false,
      exitCode: 1,
      groups: [],
      findings: [{ severity: 'error', place: { file: 'panels.csv', line: 2, field: 'length' } }],
    });
  });
});
