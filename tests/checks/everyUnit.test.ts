import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FormulaScope } from '../../src/basics/formulaScope.ts';
import type { Panel } from '../../src/model/furniture.ts';
import type { ParameterDefinition, UnitDefinition } from '../../src/model/library.ts';
import { alone, demoLibrary, demoOrder, messages } from '../helpers/demoVan.ts';

const library = demoLibrary();
const order = demoOrder(library);

/** Bounds that are bare figures; a bound that leans on other parameters is tried through its default only. */
function bound(parameter: ParameterDefinition, which: 'least' | 'most'): number | undefined {
  const formula = parameter.kind === 'choice' ? null : parameter[which];
  if (formula === null || /[a-z]/.test(formula.text)) return undefined;
  return new FormulaScope(new Map(), new Map(), []).number(formula);
}

function valuesOf(parameter: ParameterDefinition): fc.Arbitrary<string | number> | null {
  if (parameter.kind === 'choice') return fc.constantFrom(...parameter.choices);
  const least = bound(parameter, 'least');
  const most = bound(parameter, 'most');
  if (least === undefined || most === undefined) return null;
  if (parameter.kind === 'count') return fc.integer({ min: least, max: most });
  // Tenths, and thirds of a millimetre that no grid holds.
  return fc.oneof(
    fc.integer({ min: least * 10, max: most * 10 }).map((tenths) => `${tenths} / 10`),
    fc.integer({ min: least * 3, max: most * 3 }).map((thirds) => `${thirds} / 3`),
    fc.constantFrom(least, most),
  );
}

function parametersOf(unit: UnitDefinition): fc.Arbitrary<Record<string, string | number>> {
  const model: Record<string, fc.Arbitrary<string | number>> = {};
  for (const parameter of unit.parameters) {
    const values = valuesOf(parameter);
    if (values !== null) model[parameter.name] = values;
  }
  return fc.record(model, { requiredKeys: [] }) as fc.Arbitrary<Record<string, string | number>>;
}

const axisOf = { left: 'x', right: 'x', front: 'y', back: 'y', bottom: 'z', top: 'z' } as const;

/** Mass worked out another way: volume of the core times density, openings out, edging by its length. */
function massByVolume(panel: Panel): number {
  const board = library.boards.get(panel.board)!;
  const metres = (axis: 'x' | 'y' | 'z') => (panel.box[axis][1] - panel.box[axis][0]) / 1e6;
  const density = board.arealMassKgPerM2 / (board.thicknessUm / 1e6);
  let volume = metres('x') * metres('y') * metres('z');
  let edgingKg = 0;
  const taken = { length: 0, width: 0 };
  for (const edge of panel.edges) {
    if (edge.edging === null) continue;
    const edging = library.edgings.get(edge.edging)!;
    edgingKg += (edge.lengthUm / 1e6) * edging.massKgPerM;
    const side = axisOf[edge.face] === panel.lengthAxis ? 'length' : 'width';
    taken[side] += edging.thicknessUm / 1e6;
  }
  const thickness = board.thicknessUm / 1e6;
  const length = panel.finishedLengthUm / 1e6;
  const width = panel.finishedWidthUm / 1e6;
  volume -= (taken.width * length + taken.length * width - taken.width * taken.length) * thickness;
  for (const cutOut of panel.cutOuts) {
    const l = (cutOut.alongLength[1] - cutOut.alongLength[0]) / 1e6;
    volume -= l * ((cutOut.alongWidth[1] - cutOut.alongWidth[0]) / 1e6) * thickness;
  }
  return volume * density + edgingKg;
}

describe.each([...library.units.values()].map((unit) => [unit.id, unit] as const))('%s', (id, unit) => {
  it('can be built with any parameters in their ranges, or says why not', () => {
    // A worktop refuses most openings that stand anywhere, and sinks and hobs larger than theirs.
    const { runs, least } = id === 'worktop' ? { runs: 400, least: 4 } : { runs: 100, least: 3 };
    let built = 0;
    fc.assert(
      fc.property(parametersOf(unit), (set) => {
        const { findings, unit: placed } = alone(id, set, library, order);
        const errors = findings.filter((finding) => finding.severity === 'error');
        if (placed === null) {
          expect(errors.length).toBeGreaterThan(0);
          const refused = errors.every(({ code }) => code === 'must-not-met' || code === 'out-of-range');
          expect(refused, messages(errors).join('\n')).toBe(true);
          return;
        }
        built += 1;
        expect(messages(errors)).toEqual([]);
        for (const panel of placed.panels) {
          expect(panel.cutLengthUm % 100).toBe(0);
          expect(panel.cutWidthUm % 100).toBe(0);
          expect(panel.massKg).toBeCloseTo(massByVolume(panel), 9);
        }
      }),
      { numRuns: runs, seed: 7 },
    );
    expect(built).toBeGreaterThanOrEqual(least);
  });
});
