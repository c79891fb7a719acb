import { describe, expect, it } from 'vitest';
import type { Order } from '../../src/model/order.ts';
import { demoLibrary, demoOrder, formula, furnish, messages } from '../helpers/demoVan.ts';

const library = demoLibrary();

function pick<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((all, list) => all.flatMap((one) => list.map((value) => [...one, value])), [[]]);
}

const choices = {
  bed_width: [1200, 1250, 1333.3, 1350],
  sink: ['none', 'small', 'large'],
  cooker: ['none', 'one-burner', 'two-burner'],
  worktop_height: [800, 850, 900],
  bed_lockers: ['none', 'both'],
};

describe('the demonstration layout', () => {
  it.each(['van-short', 'van-long'])(
    'fits into %s with every combination of choices, or says why not',
    (vehicle) => {
      const order = demoOrder(library);
      let built = 0;
      const refused = new Set<string>();
      for (const values of pick<string | number>(Object.values(choices))) {
        const names = Object.keys(choices);
        const chosen = new Map(names.map((name, index) => [name, formula(values[index]!)]));
        const changed: Order = { ...order, vehicle, choices: chosen, changes: [] };
        const { findings } = furnish(changed, library);
        const errors = findings.filter((finding) => finding.severity === 'error');
        if (errors.length === 0) built += 1;
        for (const error of errors)
          refused.add(error.code === 'must-not-met' ? error.message : `! ${error.message}`);
      }
      expect([...refused]).toEqual([]);
      expect(built).toBe(4 * 3 * 3 * 3 * 2);
    },
  );

  it.each(['demo-long', 'demo-short'] as const)('%s has neither errors nor warnings', (name) => {
    const { findings } = furnish(demoOrder(library, name), library);
    expect(messages(findings.filter(({ severity }) => severity !== 'caution'))).toEqual([]);
  });

  it('is one whole interior of 60 to 120 panels in at least four stock groups', () => {
    const { furniture } = furnish(demoOrder(library), library);
    const panels = furniture!.units.flatMap((unit) => unit.panels);
    expect(panels.length).toBeGreaterThanOrEqual(60);
    expect(panels.length).toBeLessThanOrEqual(120);
    expect(new Set(panels.map((panel) => `${panel.board} ${panel.finish}`)).size).toBeGreaterThanOrEqual(4);
    expect(panels.map((panel) => panel.number)).toEqual(panels.map((_panel, index) => index + 1));
    expect(new Set(panels.map((panel) => panel.id)).size).toBe(panels.length);
  });
});
