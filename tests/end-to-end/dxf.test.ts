import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { readDxf } from '../documents/dxf/readDxf.ts';
import { readCsv } from '../helpers/readCsv.ts';
import { writeFiles } from './lists.ts';
import { plywright, projectFolder } from './plywright.ts';

describe('plywright cut --papers dxf', () => {
  it('writes each panel and each sheet of an order', async () => {
    const folder = temporaryFolder();
    const order = join(projectFolder, 'parts-libraries/demo-van/orders/demo-long.yaml');
    const run = await plywright(folder, ['cut', order, '--papers', 'dxf', '--work', '0', '--out', folder]);
    expect(run.code, run.stderr).toBe(0);
    const job = join(folder, 'demo-long');
    // Whatever is written is named, with what it is.
    for (const name of readdirSync(job).filter((one) => !one.startsWith('.')))
      expect(run.stdout).toMatch(new RegExp(`^  ${name}\\S* .* {2}\\S`, 'm'));
    const list = readCsv(readFileSync(join(job, 'cutting-list.csv'), 'utf8'));
    const names = readdirSync(join(job, 'dxf/panels')).sort();
    expect(names).toHaveLength(list.length);
    for (const [index, row] of list.entries()) {
      const name = names[index]!;
      expect(name).toMatch(/^\d{3}-[a-z0-9-]+\.dxf$/);
      const outline = readDxf(readFileSync(join(job, 'dxf/panels', name), 'utf8')).polygons[0]!;
      expect(outline.layer).toBe('OUTLINE');
      const most = [0, 1].map((axis) => Math.max(...outline.points.map((point) => point[axis as 0 | 1])));
      expect(most[0]).toBeCloseTo(Number(row['finished length']), 1);
      expect(most[1]).toBeCloseTo(Number(row['finished width']), 1);
    }
    const plans = readdirSync(join(job, 'cut-plans')).filter(
      (name) => /-\d+\.svg$/.test(name) && !/page-\d+/.test(name),
    );
    expect(readdirSync(join(job, 'dxf/sheets')).sort()).toEqual(
      plans.map((name) => name.replace('.svg', '.dxf')).sort(),
    );
  });

  it('writes the rectangles of a plain list, whatever its names are, and nothing unasked', async () => {
    const folder = temporaryFolder();
    writeFiles(folder, {
      'panels.csv':
        'name,length,width,count,grain\n"../side 100% ""ä""",720,560.5,4,length\nCON,564,540,3,none\n',
      'sheets.csv': 'name,length,width,grain,price\nlarge,2500,1250,length,80\n',
    });
    const list = ['cut', '--panels', 'panels.csv', '--sheets', 'sheets.csv'];
    expect((await plywright(folder, list)).code).toBe(0);
    expect(existsSync(join(folder, 'out/panels/dxf'))).toBe(false);
    const run = await plywright(folder, [...list, '--papers', 'dxf', '--replace']);
    expect(run.code, run.stderr).toBe(0);
    const names = readdirSync(join(folder, 'out/panels/dxf/panels')).sort();
    expect(names).toEqual(['1-side-100-a.dxf', '2-con-.dxf']);
    const side = readDxf(readFileSync(join(folder, 'out/panels/dxf/panels', names[0]!), 'utf8'));
    expect(side.polygons.find(({ layer }) => layer === 'OUTLINE')!.points).toEqual([
      [0, 0],
      [720, 0],
      [720, 560.5],
      [0, 560.5],
    ]);
  });
});
