import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { pdfText } from '../documents/book/pdfText.ts';
import { writeFiles } from './lists.ts';
import { plywright } from './plywright.ts';

const oddNames = [
  'drawer 🚐 front',
  'צד שמאל',
  'باب أيسر',
  '抽屉面板',
  'ﬁller e\u0301\u0308\u0301',
  '<side> & "top"',
];
const lists = {
  'panels.csv': [
    'name,length,width,count,grain,edging length 1',
    'side,720,560,4,length,oak',
    `${'a very long name of a shelf that goes on '.repeat(2).slice(0, 80).trim()},2400,50,3,none,`,
    ...oddNames.map((name) => `"${name.replaceAll('"', '""')}",300,200,1,none,`),
    '',
  ].join('\n'),
  'sheets.csv': 'name,length,width,grain,price\nlarge,2500,1250,length,80\n',
};
const list = ['cut', '--panels', 'panels.csv', '--sheets', 'sheets.csv', '--work', '0'];

async function labels(...more: string[]) {
  const folder = temporaryFolder();
  writeFiles(folder, lists);
  const run = await plywright(folder, [...list, ...more]);
  return { run, pdf: join(folder, 'out/panels/labels.pdf') };
}

describe('plywright cut --papers labels', () => {
  it('writes a label for every panel, whatever its name', async () => {
    const { run, pdf } = await labels('--papers', 'labels');
    expect(run.code, run.stderr).toBe(0);
    const text = pdfText(readFileSync(pdf)).join('\n');
    for (let piece = 1; piece <= 4; piece++) {
      expect(text).toContain(`piece ${piece} of 4`);
      expect(text.replaceAll('\n', '')).toContain(`PW1/PANELS/BOARD/1/${piece}`);
    }
    expect(text).toContain('finished 720\u00a0×\u00a0560');
    expect(text).toContain('<side> & "top"');
    expect(text).toContain('L1: oak');
    // The list names no thickness.
    expect(text).toMatch(/^cut 720\u00a0×\u00a0560$/m);
  });

  it('prints on the format asked for, from the label asked for', async () => {
    const { run, pdf } = await labels(
      '--papers',
      'labels',
      '--label-format',
      '99.1x67.7',
      '--first-label',
      '8',
    );
    expect(run.code, run.stderr).toBe(0);
    const pages = pdfText(readFileSync(pdf));
    expect(pages.length).toBeGreaterThanOrEqual(3);
    const codes = (page: string) => page.match(/PW1\//g)?.length ?? 0;
    expect(pages.slice(0, 2).map(codes)).toEqual([1, 8]);
  });

  it('speaks German where German is asked for', async () => {
    const { pdf } = await labels('--papers', 'labels', '--language', 'de');
    expect(pdfText(readFileSync(pdf)).join('\n')).toContain('weiter: Kante → montieren');
  });

  it.each([
    [['--papers', 'labels', '--label-format', '70x38'], 'Did you mean 70x37?'],
    [['--papers', 'labels', '--label-format', 'rol-62'], 'Did you mean roll-62?'],
    [
      ['--papers', 'labels', '--first-label', '15'],
      '--first-label must be at most 14: the sheet has 2 × 7 labels',
    ],
    [
      ['--papers', 'labels', '--label-format', 'roll-62', '--first-label', '2'],
      '--first-label is for sheets',
    ],
    [['--label-format', '70x37'], '--label-format goes with --papers labels'],
    [['--first-label', '3', '--papers', 'book'], '--first-label goes with --papers labels'],
  ])('%j is told: %s', async (args, said) => {
    const { run, pdf } = await labels(...args);
    expect(run.code).toBe(2);
    expect(run.stderr).toContain(said);
    expect(existsSync(pdf)).toBe(false);
  });

  it('tells its formats', async () => {
    const { stdout } = await plywright(temporaryFolder(), ['cut', '--help']);
    for (const name of ['70x37', '63.5x38.1', '99.1x38.1', '99.1x67.7', '105x37', 'roll-62', 'roll-100x50']) {
      expect(stdout).toContain(`  ${name}`);
    }
  });
});
