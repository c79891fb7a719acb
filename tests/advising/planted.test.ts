import { describe, expect, it } from 'vitest';
import { adviseOrder } from '../../src/pipeline/adviseOrder.ts';
import { must } from '../helpers/demoVan.ts';
import { plankLibrary, plankOrder } from '../helpers/plankLibrary.ts';

/** Of a sheet of the test library after its trims, and the saw's kerf, all in mm. */
const [LENGTH, WIDTH, KERF] = [2480, 1200, 3.2];

/** The largest size of which so many, with a kerf between them, lie side by side in a strip. */
function largest(strip: number, count: number): number {
  return (strip + KERF) / count - KERF;
}

/**
 * Planks that are one to eight mm too deep or too long for one more of them in each strip of a sheet. As many as a sheet would
 * hold are wanted, so that the change saves a sheet and nothing smaller does; reckoned by hand, not by the program.
 */
const planted = [
  { of: 'depth', across: 3, along: 2, tooLarge: 1 },
  { of: 'depth', across: 4, along: 2, tooLarge: 2 },
  { of: 'depth', across: 5, along: 3, tooLarge: 3 },
  { of: 'depth', across: 6, along: 3, tooLarge: 4 },
  { of: 'depth', across: 4, along: 4, tooLarge: 5 },
  { of: 'depth', across: 3, along: 5, tooLarge: 6 },
  { of: 'depth', across: 5, along: 2, tooLarge: 8 },
  { of: 'length', across: 3, along: 2, tooLarge: 7 },
  { of: 'length', across: 4, along: 3, tooLarge: 1 },
  { of: 'length', across: 3, along: 4, tooLarge: 6 },
] as const;

describe('advice', () => {
  const library = plankLibrary();

  it.each(planted)('finds planks whose $of is $tooLarge mm too large', ({ of, across, along, tooLarge }) => {
    const fits = {
      length: Math.floor(largest(LENGTH, along)),
      depth: Math.floor(largest(WIDTH, across)),
    };
    const now = { ...fits, [of]: fits[of] + tooLarge };
    const text = plankOrder({ ...now, rows: across * along });
    const request = {
      text,
      file: 'orders/planks.yaml',
      library,
      whatIf: { below: [], set: [] },
      may: [`planks.${of}=${fits[of] - 12}..${now[of] + 10}`],
      mostNestings: 100,
      search: { seed: 1, workLimit: 200 },
    };
    const report = must(adviseOrder(request, null));
    expect(report.now.sheets).toBe(2);
    expect(report.advice).toHaveLength(1);
    const [advice] = report.advice;
    expect(advice).toMatchObject({
      changes: [{ name: `planks.${of}`, kind: 'length', from: now[of], to: fits[of] }],
      settings: [`planks.${of}=${fits[of]}`],
      sheets: [{ board: 'poplar-15', finish: 'oak', sheetsBefore: 2, sheetsAfter: 1 }],
      plan: { sheets: 1, proved: true },
    });
    expect(report.lookedUpTo).toBeNull();
    // The bound and panels of many values at once save trying every value.
    expect(report.nestings).toBeLessThan(12);
  });
});
