import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readLibrary } from '../../src/library/index.ts';
import { type AdviceReport, adviseOrder } from '../../src/pipeline/adviseOrder.ts';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import { libraryFiles, must } from '../helpers/demoVan.ts';
import { plankLibrary, plankOrder } from '../helpers/plankLibrary.ts';

/** Four of this depth lie across a sheet, at most: (1200 + 3.2) / 4 - 3.2, see planted.test.ts. */
const FITS = 297;
const search = { seed: 1, workLimit: 100 };
const whatIf = { below: [], set: [] };

/** Whether an order with what was advised passes every check, asked anew. */
function passes(
  text: string,
  file: string,
  library: ReturnType<typeof plankLibrary>,
  settings: readonly string[],
) {
  return furnishOrder(text, file, library, { below: [], set: settings }).ok;
}

it('never advises what a check forbids, and what it advises is the smallest change that is allowed', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 270, max: 300 }),
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 1, max: 8 }),
      (from, width, tooLarge) => {
        // A band of depths is forbidden, in which the largest that fits may lie.
        const library = plankLibrary({ must: `depth < ${from} || depth > ${from + width}` });
        const now = FITS + tooLarge;
        const text = plankOrder({ length: 1238, depth: now, rows: 8 });
        const allowed = (depth: number) => depth < from || depth > from + width;
        if (!allowed(now)) return;
        const least = 260;
        const request = { text, file: 'orders/planks.yaml', library, whatIf, search, mostNestings: 100 };
        const may = [`planks.depth=${least}..${now + 20}`];
        const { advice } = must(adviseOrder({ ...request, may }, null)) as AdviceReport;
        let wanted = FITS;
        while (!allowed(wanted)) wanted--;
        expect(advice.map(({ changes }) => changes[0]!.to)).toEqual(wanted >= least ? [wanted] : []);
        for (const { settings } of advice) expect(passes(text, request.file, library, settings)).toBe(true);
      },
    ),
    { numRuns: 6 },
  );
});

it('keeps to what stands around a unit, and tells only what passes', () => {
  const folder = 'parts-libraries/workshop-bench';
  const files = libraryFiles(folder);
  const library = must(readLibrary(files, folder));
  const file = `${folder}/orders/garage-bench.yaml`;
  const text = files.get(file)!;
  const may = ['desk.depth=500..760/20', 'desk.width=1000..1500/50'];
  const request = { text, file, library, whatIf, may, mostNestings: 12, search: { seed: 1, workLimit: 0 } };
  const { advice, now, panels, sizes } = must(adviseOrder(request, null));
  for (const { settings, plan } of advice) {
    expect(passes(text, file, library, settings)).toBe(true);
    expect(plan.sheetsCostMinor).toBeLessThan(now.sheetsCostMinor);
  }
  // The desk's top is the only panel of its second sheet.
  expect(panels).toContainEqual(
    expect.objectContaining({
      board: 'beech-30',
      unit: 'desk',
      panels: ['top'],
      sheetsBefore: 2,
      sheetsAfter: 1,
    }),
  );
  const offered = library.sheets.filter(({ board }) => board === 'birch-18');
  expect(offered.length).toBeGreaterThan(1);
  expect(sizes.map(({ board, lengthMm, had }) => [board, lengthMm, had])).toEqual(
    offered.map(({ board, lengthUm }) => [board, lengthUm / 1000, 'offered']),
  );
  for (const { costMinor, costNowMinor } of sizes) {
    // The plan of the order may mix sizes, so that one size alone is seldom cheaper; here each is told as it was nested.
    if (costMinor !== null) expect(costMinor).toBeGreaterThanOrEqual(costNowMinor);
  }
});
