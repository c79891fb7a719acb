import { describe, expect, it } from 'vitest';
import { assemblyOrder } from '../../src/basics/assemblyOrder.ts';
import { axes, sharedUm } from '../../src/basics/boxes.ts';
import { jointOf } from '../../src/basics/joints.ts';
import { readLibrary } from '../../src/library/index.ts';
import type { Panel, PlacedUnit } from '../../src/model/furniture.ts';
import type { Axis } from '../../src/model/geometry.ts';
import type { Library } from '../../src/model/library.ts';
import { readOrder } from '../../src/order/index.ts';
import { demoOrders } from '../helpers/demoPlan.ts';
import { alone, demoLibrary, demoOrder, furnish, libraryFiles, must } from '../helpers/demoVan.ts';

const van = demoLibrary();
const order = demoOrder(van);
const benchRoot = 'parts-libraries/workshop-bench';
const benchFiles = libraryFiles(benchRoot);
const bench = must(readLibrary(benchFiles, benchRoot));
const benchPath = `${benchRoot}/orders/garage-bench.yaml`;
const benchOrder = must(readOrder(benchFiles.get(benchPath)!, benchPath, bench));

function unitsOf(library: Library): (readonly [string, PlacedUnit])[] {
  const own = library === van ? order : benchOrder;
  return [...library.units.keys()].flatMap((id) => {
    const { unit } = alone(id, {}, library, own);
    return unit === null ? [] : [[id, unit] as const];
  });
}

const ordered = demoOrders.flatMap((name) =>
  furnish(demoOrder(van, name), van).furniture!.units.map((unit) => [`${name}: ${unit.name}`, unit] as const),
);
const units = [...unitsOf(van), ...unitsOf(bench), ...ordered];

function joined(a: Panel, b: Panel): boolean {
  const { kind } = jointOf(a, b);
  return kind === 'touching' || kind === 'let in';
}

/** Whether a panel comes straight to its place past others: along some axis from one side nothing stands in its way. */
function comesStraight(panel: Panel, there: readonly Panel[]): boolean {
  return axes.some((axis: Axis) =>
    [0, 1].some((end) =>
      there.every((other) => {
        if (jointOf(panel, other).kind === 'let in') return true;
        const beyond =
          end === 1 ? other.box[axis][1] > panel.box[axis][1] : other.box[axis][0] < panel.box[axis][0];
        const beside = axes.every((each) => each === axis || sharedUm(panel.box[each], other.box[each]) > 0);
        return !(beyond && beside);
      }),
    ),
  );
}

function names(unit: PlacedUnit): string[] {
  return assemblyOrder(unit).steps.map(
    ({ kind, panels }) => `${kind}: ${panels.map((p) => p.name).join(', ')}`,
  );
}

describe('the order in which a unit is put together', () => {
  it('has each panel once', () => {
    for (const [name, unit] of units) {
      const { steps, held } = assemblyOrder(unit);
      const all = [...steps, ...held].flatMap(({ panels }) => panels.map(({ id }) => id));
      expect([...all].sort(), name).toEqual(unit.panels.map(({ id }) => id).sort());
    }
  });

  it('puts every panel to one that holds it, but for uprights and what the bench holds', () => {
    for (const [name, unit] of units) {
      const { steps } = assemblyOrder(unit);
      const puts = steps.flatMap(({ kind, panels }) => panels.map((panel) => ({ kind, panel })));
      const first = puts[0]?.kind;
      puts.forEach(({ kind, panel }, index) => {
        if (kind === 'upright' || kind === first) return;
        const before = puts.slice(0, index).map((put) => put.panel);
        expect(
          before.some((other) => joined(panel, other)),
          `${name}: ${panel.name}`,
        ).toBe(true);
      });
    }
  });

  it('has a straight way for every panel past what stands already', () => {
    for (const [name, unit] of units) {
      const there: Panel[] = [];
      for (const panel of assemblyOrder(unit).steps.flatMap(({ panels }) => panels)) {
        expect(comesStraight(panel, there), `${name}: ${panel.name}`).toBe(true);
        there.push(panel);
      }
    }
  });

  it('puts what fittings hold after what they hold it to', () => {
    let tried = 0;
    for (const [name, unit] of units) {
      const { steps, held } = assemblyOrder(unit);
      const sequence = [...steps, ...held].flatMap(({ panels }) => panels.map(({ id }) => id));
      for (const { panels } of held) {
        const hangings = (unit.hangings ?? []).filter((each) =>
          panels.some(({ id }) => each.panels.includes(id)),
        );
        if (hangings.length === 0) continue;
        tried += 1;
        const at = Math.min(...panels.map(({ id }) => sequence.indexOf(id)));
        const on = hangings.flatMap((each) => each.on.map((id) => sequence.indexOf(id)));
        expect(Math.min(...on), name).toBeLessThan(at);
      }
    }
    expect(tried).toBeGreaterThan(50);
  });

  it('begins a cupboard with its bottom, closes the back from above and ends with what hangs', () => {
    const cupboard = alone('tall-cupboard', {}, van, order).unit!;
    const { steps, held } = assemblyOrder(cupboard);
    expect(steps.map(({ kind, slidesFrom }) => [kind, slidesFrom])).toEqual([
      ['base', null],
      ['upright', null],
      ['between', null],
      ['back', 'top'],
      ['between', null],
    ]);
    expect(steps.at(-1)!.panels.map(({ name }) => name)).toEqual(['top']);
    // Shelves lie on pins once all that stands, stands; doors hang last.
    expect(held.slice(-2).map(({ isFront }) => isFront)).toEqual([true, true]);
    expect(held.slice(0, -2).flatMap(({ panels }) => panels.map(({ baseName }) => baseName))).toEqual([
      'lower shelf',
      'lower shelf',
      'upper shelf',
      'upper shelf',
    ]);
  });

  it('puts drawers, crates and lids with cleats together for themselves', () => {
    const drawers = assemblyOrder(alone('drawer-cupboard', {}, van, order).unit!).held;
    expect(drawers.map(({ panels }) => panels.length)).toEqual([6, 6, 6]);
    const crates = assemblyOrder(alone('workbench', {}, bench, benchOrder).unit!).held;
    expect(crates.map(({ panels }) => panels[0]!.name)).toEqual([
      'crate 1 bottom',
      'crate 2 bottom',
      'crate 3 bottom',
    ]);
    const lids = assemblyOrder(alone('seat-box', {}, van, order).unit!).held;
    expect(lids.map(({ panels }) => panels.map(({ name }) => name))).toEqual([
      ['lid 1', 'front cleat 1', 'rear cleat 1'],
      ['lid 2', 'front cleat 2', 'rear cleat 2'],
    ]);
  });

  it('turns upside down what only its top holds together', () => {
    expect(names(alone('bed-bridge', {}, van, order).unit!)[0]).toBe('top: board 1, board 2, board 3');
  });
});
