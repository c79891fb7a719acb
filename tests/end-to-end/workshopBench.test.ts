import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { pdfText } from '../documents/book/pdfText.ts';
import { plywright, projectFolder } from './plywright.ts';

const library = join(projectFolder, 'parts-libraries/workshop-bench');
const order = join(library, 'orders/garage-bench.yaml');

/** The order with something else in it, in a folder of its own. */
async function checkChanged(from: string, to: string) {
  const folder = temporaryFolder();
  const text = readFileSync(order, 'utf8');
  expect(text).toContain(from);
  writeFileSync(join(folder, 'changed.yaml'), text.replace(from, to));
  return plywright(folder, ['check', 'changed.yaml']);
}

describe('a library of furniture for a room', () => {
  it('is found right, every unit of it', async () => {
    const run = await plywright(projectFolder, ['check', library]);
    expect(run.code, run.stdout + run.stderr).toBe(0);
    expect(run.stdout).toContain('nothing is wrong with 4 units, 1 layout and 1 order');
  });

  // Words that only make sense where furniture is driven about.
  const ofVehicles = {
    en: /\b(vans?|vehicles?|campers?|payload|cab|roof|wheel|driver|passengers?|seats?|belts?|crash|converter|axle)\b/i,
    de: /fahrzeug|fahrerhaus|fahrt|radkasten|zuladung|wohnmobil|mitfahrer|\bgurt|umbauer|\bachs|aufbau|\bdach/i,
  } as const;

  it.each(['en', 'de'] as const)(
    'is cut and replayed, and no paper speaks of a vehicle: %s',
    async (language) => {
      const folder = temporaryFolder();
      const run = await plywright(folder, ['cut', order, '--papers', 'all', '--language', language]);
      expect(run.code, run.stderr).toBe(0);
      expect(run.stdout).toMatch(/41 panels from \d sheets in 3 stock groups/);
      expect((await plywright(folder, ['replay', 'out/garage-bench/plan.json'])).code).toBe(0);
      expect((await plywright(folder, ['draw', order, '--out', folder])).code).toBe(0);
      const papers = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
        /\.[a-z]+$/.test(path),
      );
      expect(papers.length).toBeGreaterThan(20);
      const said = new Map([['stdout', run.stdout + run.stderr]]);
      for (const path of papers) {
        const bytes = readFileSync(join(folder, path));
        // Drawings of units are English words whatever the language of the papers.
        said.set(path, path.endsWith('.pdf') ? pdfText(bytes).join('\n') : bytes.toString('utf8'));
      }
      for (const [path, text] of said) {
        // Letters of the page's own style and script are no words; packed files have none to read.
        if (/\.xlsx$/.test(path)) continue;
        const words = text.replace(/<(style|script)[\s\S]*?<\/\1>/g, '');
        for (const pattern of Object.values(ofVehicles)) {
          const found = pattern.exec(words);
          const around = found === null ? null : words.slice(Math.max(0, found.index - 60), found.index + 60);
          expect(around, path).toBeNull();
        }
      }
    },
  );

  it('fits under walls that lean in', async () => {
    const run = await checkChanged('vehicle: garage', 'vehicle: attic-room');
    expect(run.code, run.stdout).toBe(0);
  });

  it('has walls and a ceiling that it may not go through, in words for a room', async () => {
    const added = '- { add: wall-shelf, as: high shelf, at: { x: -10, y: 100, z: 2000 }, facing: right }';
    const run = await checkChanged('changes:', `changes:\n  ${added}`);
    expect(run.code).toBe(1);
    const said = run.stdout.replace(/\s+/g, ' ');
    expect(said).toContain('stands 350.0 mm through the ceiling');
    expect(said).toContain('stands 10.0 mm through the front end');
  });
});

describe('a unit that no order uses', () => {
  const files = ['library', 'boards', 'finishes', 'edgings', 'fittings', 'sheets', 'saws'];

  async function checkWith(unit: string) {
    const folder = join(temporaryFolder(), 'my-bench');
    for (const name of files) cpSync(join(library, `${name}.yaml`), join(folder, `${name}.yaml`));
    for (const name of ['vehicles', 'units', 'layouts', 'orders']) {
      cpSync(join(library, name), join(folder, name), { recursive: true });
    }
    writeFileSync(join(folder, 'units/stool.yaml'), unit);
    const text = readFileSync(order, 'utf8').replace('library: workshop-bench', 'library: my-bench');
    writeFileSync(join(folder, 'orders/garage-bench.yaml'), text);
    return plywright(folder, ['check', '.', '--json']);
  }

  const stool = `title: Stool
parameters:
  width: { default: 400, least: 300, most: 500 }
outside: { x: [0, width], y: [0, 300], z: [0, 450] }
panels:
  seat: { role: structure, x: [0, width], y: [0, 300], z: [450 - thickness.structure, 450], grain: x }
  left: { role: structure, x: [0, 18], y: [0, 300], z: [0, 450 - thickness.structure], grain: z }
  right: { role: structure, x: [382, 400], y: [0, 300], z: [0, 450 - thickness.structure], grain: z }
`;

  it('is put together with its defaults and at the ends of its ranges', async () => {
    const right = stool
      .replace('[0, 18]', '[0, thickness.structure]')
      .replace('[382, 400]', '[width - thickness.structure, width]');
    const run = await checkWith(right);
    expect(JSON.parse(run.stdout)).toMatchObject({ ok: true, findings: [] });
  });

  it('is told wrong with its file and line where only the least value shows it', async () => {
    const narrow = stool
      .replace('[0, 18]', '[0, thickness.structure]')
      .replace('[382, 400]', '[382.4, 400]')
      .replace(
        'z: [0, 450 - thickness.structure], grain: z }\n  right',
        'z: [0, 432.4], grain: z }\n  right',
      );
    const run = await checkWith(narrow);
    const { ok, findings } = JSON.parse(run.stdout);
    expect(ok).toBe(false);
    expect(findings.map((found: { place: object }) => found.place)).toContainEqual(
      expect.objectContaining({ file: expect.stringMatching(/units\/stool\.yaml$/), line: 8 }),
    );
    for (const { message } of findings) expect(message).toContain('(stool with width = 300)');
  });

  it('is told wrong with a name that nobody defines, which reading alone does not find', async () => {
    const run = await checkWith(stool.replace('[382, 400]', '[width - bord, width]'));
    const { findings } = JSON.parse(run.stdout);
    expect(findings.some((found: { message: string }) => found.message.includes('bord'))).toBe(true);
  });
});
