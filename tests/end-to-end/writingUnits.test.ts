import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plywright, projectFolder } from './plywright.ts';

const libraries = join(projectFolder, 'parts-libraries');
const page = readFileSync(join(libraries, 'WRITING-UNITS.md'), 'utf8');

/** The files that the page writes, by their names in a library. */
const files = new Map(
  [...page.matchAll(/```yaml\n# (\S+)\n([\s\S]*?)```/g)].map((match) => [match[1]!, match[2]!]),
);

/** Every change that the page makes to its unit: what is written for what, and the sentence that this gives. */
const changes = [...page.matchAll(/Write `([^`]+)` for `([^`]+)`[^\n]*\n\n```text\n([^\n]+)\n```/g)].map(
  ([, to, from, sentence]) => ({ to: to!, from: from!, sentence: sentence! }),
);

function libraryWith(written: ReadonlyMap<string, string>): string {
  const folder = join(temporaryFolder(), 'my-library');
  cpSync(join(libraries, 'workshop-bench'), folder, { recursive: true });
  rmSync(join(folder, 'orders'), { recursive: true });
  mkdirSync(join(folder, 'orders'));
  for (const [name, text] of written) writeFileSync(join(folder, name), text);
  return folder;
}

describe('the page about writing a unit', () => {
  it('writes a unit, a layout and an order, and breaks the unit in several ways', () => {
    expect([...files.keys()]).toEqual([
      'units/shoe-rack.yaml',
      'layouts/hall.yaml',
      'orders/hall-racks.yaml',
      'units/eaves-shelf.yaml',
      'orders/attic-racks.yaml',
    ]);
    expect(changes.length).toBeGreaterThanOrEqual(6);
    expect(changes).toHaveLength(page.split('\nWrite `').length - 1);
  });

  it('has files in which nothing is wrong, and which can be cut and replayed', async () => {
    const folder = libraryWith(files);
    const run = await plywright(folder, ['check', '.', '--json']);
    expect(JSON.parse(run.stdout)).toMatchObject({ ok: true, findings: [] });
    const cut = await plywright(folder, ['cut', 'orders/hall-racks.yaml']);
    expect(cut.code, cut.stdout + cut.stderr).toBe(0);
    expect((await plywright(folder, ['replay', 'out/hall-racks/plan.json'])).code).toBe(0);
  });

  it('has a shelf under the roof whose sides take the shape of the wall', async () => {
    const folder = libraryWith(files);
    const cut = await plywright(folder, ['cut', 'orders/attic-racks.yaml']);
    expect(cut.code, cut.stdout + cut.stderr).toBe(0);
    const { groups } = JSON.parse(readFileSync(join(folder, 'out/attic-racks/plan.json'), 'utf8'));
    const panels = groups.flatMap((group: { panels: object[] }) => group.panels);
    const side = panels.find(({ id }: { id: string }) => id === 'eaves shelf/left side');
    // The wall leans in by 1 mm for every 2 mm: 200 mm at 1500, where the shelf ends; 15 mm are left on.
    expect(side).toMatchObject({ length: 400, width: 515, finishedLength: 400, finishedWidth: 500 });
    expect(side.byHand.outline).toEqual([
      [0, 0],
      [400, 0],
      [400, 315],
      [0, 515],
    ]);
    const top = panels.find(({ id }: { id: string }) => id === 'eaves shelf/top');
    expect(top).toMatchObject({ width: 300 });
  });

  it.each(changes)('$to for $from gives the sentence that it quotes', async ({ to, from, sentence }) => {
    const unit = files.get('units/shoe-rack.yaml')!;
    expect(unit).toContain(from);
    const order = readFileSync(join(libraries, 'workshop-bench/orders/garage-bench.yaml'), 'utf8');
    // The order of the bench gives the roles their boards; the shoe rack stands in no order.
    const folder = libraryWith(
      new Map([
        ['units/shoe-rack.yaml', unit.replace(from, to)],
        ['orders/bench.yaml', order.replace('library: workshop-bench', 'library: my-library')],
      ]),
    );
    const run = await plywright(folder, ['check', '.', '--json']);
    expect(run.code).toBe(1);
    const { findings } = JSON.parse(run.stdout);
    expect(findings.map((found: { message: string }) => found.message)).toContain(sentence);
    for (const { place } of findings) {
      expect(place).toMatchObject({
        file: expect.stringMatching(/shoe-rack\.yaml$/),
        line: expect.any(Number),
      });
    }
  });
});
