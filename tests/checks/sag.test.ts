import { describe, expect, it } from 'vitest';
import { panelSag } from '../../src/checks/sag.ts';
import { sagMm } from '../../src/checks/sagFormula.ts';
import type { Library } from '../../src/model/library.ts';
import { alone, demoLibrary, demoOrder, formula, furnish } from '../helpers/demoVan.ts';
import { type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';
import { body } from '../helpers/standing.ts';

const board = demoLibrary().boards.get('poplar-15')!;
/** The boards state no stiffness and no role a load, so that each test says its own. */
function libraryWith(more: Partial<Library> = {}, stiffnessMPa?: { along: number; across: number }): Library {
  const { loadsKgPerM2: _loads, ...library } = demoLibrary();
  const { stiffnessMPa: _own, ...plain } = board;
  const boards = new Map(library.boards).set(board.id, {
    ...plain,
    ...(stiffnessMPa === undefined ? {} : { stiffnessMPa }),
  });
  return { ...library, boards, ...more };
}
const order = demoOrder(demoLibrary());

/** Two sides 300 deep, a shelf between them 1000 long, 16.2 thick. */
const left: PanelText = { x: [0, 16.2], y: [0, 300], z: [0, 400], grain: 'z' };
const right: PanelText = { x: [1016.2, 1032.4], y: [0, 300], z: [0, 400], grain: 'z' };
const shelf: PanelText = { x: [16.2, 1016.2], y: [0, 300], z: [200, 216.2], grain: 'x', load: 20 };

function shelved(panels: Record<string, PanelText>, library = libraryWith()) {
  const size = [1032.4, 300, 400] as const;
  const all = { left, right, ...panels };
  const {
    unit: placed,
    findings,
    furniture,
  } = alone('test', {}, withUnits(library, unit('test', size, all)), order);
  const panel = placed?.panels.find(({ name }) => name === 'shelf');
  return { sag: panel && panelSag(panel, placed!, furniture!, library), panel, findings };
}

const warnings = ({ findings }: ReturnType<typeof shelved>) =>
  findings.filter(({ code }) => code === 'sags').map(({ message }) => message);

describe('a worktop over cupboards of their own', () => {
  it.each(['left', 'right', 'front', 'rear'] as const)('lies on their sides, facing %s', (looks) => {
    const library = libraryWith();
    const top = unit('top', [1500, 300, 16.2], {
      shelf: {
        x: [0, 1500],
        y: [0, 300],
        z: [0, 16.2],
        grain: 'x',
        load: 30,
        cutOuts: { sink: { x: [500, 900], y: [50, 250] } },
      },
    });
    const box = unit('box', [600, 300, 400], {
      left,
      right: { ...left, x: [583.8, 600] },
      bottom: { x: [16.2, 583.8], y: [0, 300], z: [0, 16.2], grain: 'x' },
    });
    const lengthways = looks === 'left' || looks === 'right';
    const place = (name: string, id: string, along: number, z: number) => ({
      name,
      place: { file: 'test.yaml' },
      unit: id,
      at: lengthways
        ? { x: formula(along), y: formula(0), z: formula(z) }
        : { x: formula(0), y: formula(along), z: formula(z) },
      facing: looks,
      set: new Map(),
      when: null,
      repeat: null,
    });
    const layout = {
      id: 'kitchen',
      title: 'Kitchen',
      file: 'test.yaml',
      vehicles: ['body'],
      choices: [],
      names: new Map(),
      units: [place('first', 'box', 0, 0), place('second', 'box', 900, 0), place('top', 'top', 0, 400)],
      musts: [],
    };
    const whole = {
      ...withUnits(library, top, box),
      vehicles: new Map([['body', body([[0, 3000]])]]),
      layouts: new Map([['kitchen', layout]]),
    };
    const asked = { ...order, layout: 'kitchen', vehicle: 'body', choices: new Map(), changes: [] };
    const { furniture, findings } = furnish(asked, whole);
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const placed = furniture!.units[2]!;
    const sag = panelSag(placed.panels[0]!, placed, furniture!, whole);
    // The widest bays are those over the cupboards, and the sink takes wood away in one of them.
    expect(sag?.spanMm).toBeCloseTo(567.6, 9);
    expect(sag?.loadKg).toBeCloseTo((30 * 567.6) / 1500, 9);
    expect(sag?.strip.widthMm).toBe(100);
  });
});

describe('a shelf between two sides', () => {
  it('sags as the formula says, its own weight with its load', () => {
    const { sag, panel } = shelved({ shelf });
    const strip = {
      loadKg: 20 + panel!.massKg,
      spanMm: 1000,
      widthMm: 300,
      thicknessMm: 16.2,
      // Pale grey has no direction, so the shelf may be cut across the grain of the board.
      stiffnessMPa: 3000,
      shearMPa: 3000 / 16,
    };
    expect(sag).toMatchObject({ spanMm: 1000, loadKg: 20, limitMm: 5 });
    expect(sag?.sagMm).toBeCloseTo(sagMm(strip), 12);
  });

  it('is warned of above a two hundredth of its span, with what would help', () => {
    const found = shelved({ shelf });
    const [finding] = found.findings.filter(({ code }) => code === 'sags');
    expect(finding?.severity).toBe('warning');
    expect(finding?.message).toBe(
      'the shelf of the unit sags 9.0 mm over 1000 mm under 20.0 kg; 1/200 of the span is 5.0 mm',
    );
    expect(finding?.advice).toBe(
      'support it in the middle, where 0.6 mm are left, take a board of 19.8 mm or more, or put a rail under it',
    );
    expect(warnings(shelved({ shelf: { ...shelf, load: 8 } }))).toEqual([]);
  });

  it('is stiffer along the grain of a finish that keeps it, and as stiff as its board says', () => {
    const grained = { ...order.roles.get('front')!, board: board.id };
    const roles = new Map(order.roles).set('carcass', grained);
    const along = (stiffness?: { along: number; across: number }) => {
      const library = libraryWith({}, stiffness);
      const test = unit('test', [1032.4, 300, 400], { left, right, shelf });
      const { unit: placed, furniture } = alone('test', {}, withUnits(library, test), { ...order, roles });
      return panelSag(placed!.panels[2]!, placed!, furniture!, library)!.strip.stiffnessMPa;
    };
    expect(along()).toBe(5000);
    expect(along({ along: 6000, across: 4000 })).toBe(6000);
    expect(shelved({ shelf }, libraryWith({}, { along: 6000, across: 4000 })).sag?.strip.stiffnessMPa).toBe(
      4000,
    );
  });

  it('spans from support to support: a partition under it halves the span', () => {
    const partition: PanelText = { x: [508.1, 524.3], y: [0, 300], z: [0, 200], grain: 'z' };
    const { sag } = shelved({ shelf, partition });
    expect(sag?.spanMm).toBeCloseTo((1000 - 16.2) / 2, 9);
    expect(sag?.loadKg).toBeCloseTo((20 * (1000 - 16.2)) / 2 / 1000, 9);
    // One that stands on it holds nothing up, unless it hangs from a panel above.
    const above = { ...partition, z: [216.2, 383.8] } as const;
    expect(shelved({ shelf, partition: above }).sag?.spanMm).toBe(1000);
    const top: PanelText = { x: [16.2, 1016.2], y: [0, 300], z: [383.8, 400], grain: 'x' };
    expect(shelved({ shelf, partition: above, top }).sag?.spanMm).toBeCloseTo(491.9, 9);
  });

  it('is held across its width where rails run under both long edges', () => {
    const rail = (y: readonly [number, number]): PanelText => ({
      x: [16.2, 1016.2],
      y,
      z: [150, 200],
      grain: 'x',
    });
    const front = rail([0, 16.2]);
    expect(shelved({ shelf, front }).sag?.spanMm).toBe(1000);
    expect(shelved({ shelf, front, back: rail([283.8, 300]) }).sag?.spanMm).toBeCloseTo(267.6, 9);
  });

  it('is held by pins across a gap, but not by a thin back', () => {
    const loose: PanelText = { ...shelf, x: [17.2, 1015.2], heldBy: { left: 1, right: 1 } };
    expect(shelved({ shelf: loose }).sag).toMatchObject({ spanMm: 1000, loadKg: 20 });
    const back = { role: 'back', x: [16.2, 1016.2], y: [296, 300], z: [0, 400], grain: null } as const;
    const rail: PanelText = { x: [16.2, 1016.2], y: [0, 16.2], z: [150, 200], grain: 'x' };
    const before = { ...shelf, y: [0, 296] } as const;
    expect(shelved({ shelf: before, rail, back }).sag?.spanMm).toBe(1000);
  });

  it('has no more wood than its openings leave', () => {
    const cutOuts = { a: { x: [300, 500], y: [50, 150] }, b: { x: [450, 700], y: [200, 250] } } as const;
    expect(shelved({ shelf: { ...shelf, cutOuts } }).sag?.strip.widthMm).toBe(150);
    expect(shelved({ shelf: { ...shelf, cutOuts: { a: cutOuts.a } } }).sag?.strip.widthMm).toBe(200);
  });

  it('bears what its role bears for each square metre, unless it says so itself', () => {
    const loads = libraryWith({ loadsKgPerM2: new Map([['carcass', 50]]) });
    const { load: _load, ...unloaded } = shelf;
    expect(shelved({ shelf: unloaded }, loads).sag?.loadKg).toBeCloseTo(15, 9);
    expect(shelved({ shelf }, loads).sag?.loadKg).toBe(20);
    expect(shelved({ shelf: { ...shelf, load: 0 } }, loads).sag).toBeNull();
    expect(shelved({ shelf: unloaded }).sag).toBeNull();
  });

  it('is refused a load that is none', () => {
    const { findings } = shelved({ shelf: { ...shelf, load: -1 } });
    expect(findings.map(({ message }) => message)).toEqual([
      'the load on the shelf comes to -1 kg; it may go from 0 up to 2000 kg',
    ]);
  });

  it('is told of once where a repeat made it', () => {
    const two: PanelText = { ...shelf, z: ['100 * i', '100 * i + 16.2'], repeat: ['i', 2] };
    expect(warnings(shelved({ shelf: two }))).toHaveLength(1);
  });
});
