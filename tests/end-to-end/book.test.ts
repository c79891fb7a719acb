import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { pdfText } from '../documents/book/pdfText.ts';
import { writeFiles } from './lists.ts';
import { plywright } from './plywright.ts';

const lists = {
  'panels.csv': 'name,length,width,count,grain\nside <a>,720,560,4,length\nshelf,564,540,3,none\n',
  'sheets.csv': 'name,length,width,grain,price\nlarge,2500,1250,length,80\n',
};
const list = ['cut', '--panels', 'panels.csv', '--sheets', 'sheets.csv'];

describe('plywright cut --papers', () => {
  it('writes the job book, of a plain list too, in the language asked for', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, lists);
    const run = await plywright(folder, [...list, '--papers', 'book', '--language', 'de']);
    expect(run.code, run.stderr).toBe(0);
    const html = readFileSync(join(folder, 'out/panels/book.html'), 'utf8');
    expect(html).toContain('<html lang="de"');
    expect(html).toContain('side &lt;a&gt;');
    const pages = pdfText(readFileSync(join(folder, 'out/panels/book.pdf')));
    expect(pages.join('\n')).toContain('ist Teil 1, side <a>,');
  });

  it('writes all papers, on A3 and in inches, and keeps lists in mm', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, lists);
    const asked = ['--papers', 'all', '--page', 'a3', '--lengths', 'inches', '--json'];
    const run = await plywright(folder, [...list, ...asked]);
    expect(run.code, run.stderr).toBe(0);
    const papers: string[] = JSON.parse(run.stdout).jobs[0].papers;
    for (const paper of ['book.html', 'book.pdf', 'labels.pdf', 'lists.xlsx'])
      expect(papers).toContain(paper);
    const out = (paper: string) => readFileSync(join(folder, 'out/panels', paper));
    expect(out('book.html').toString()).toContain('28\u00a011/32"\u00a0×\u00a022\u00a03/64"');
    // A3 lying, in points.
    expect(out('book.pdf').toString('latin1')).toMatch(/MediaBox \[0 0 1190\.55\d* 841\.8/);
    expect(out('cutting-list.csv').toString()).toContain(',720.0,560.0,');
    const wrong = await plywright(folder, [...list, '--lengths', 'inch']);
    expect(wrong.stderr).toContain('It must be one of mm, inches, inches-32. Did you mean inches?');
  });

  it('writes no book unasked, and says which papers there are', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, lists);
    expect((await plywright(folder, list)).code).toBe(0);
    expect(existsSync(join(folder, 'out/panels/book.pdf'))).toBe(false);
    const wrong = await plywright(folder, [...list, '--papers', 'poster']);
    expect(wrong.code).not.toBe(0);
    expect(wrong.stderr).toContain('It must be of book, dxf, labels, workbook');
    const misspelt = await plywright(folder, [...list, '--papers', 'book,lables']);
    expect(misspelt.stderr).toContain('Did you mean labels?');
  });
});
