import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/model/finding.ts';
import { demoLibrary, demoOrder, formula, furnish, messages } from '../helpers/demoVan.ts';

const library = demoLibrary();

type Choices = Readonly<Record<string, string | number>>;

/** A demonstration order without its changes, in one of the vans, with these choices and no others. */
function chosen(name: string, vehicle: string, choices: Choices, of = library) {
  const order = demoOrder(of, name);
  const values = new Map(Object.entries(choices).map(([choice, value]) => [choice, formula(value)]));
  return furnish({ ...order, vehicle, choices: values, changes: [] }, of);
}

function errors(findings: readonly Finding[]): string[] {
  return messages(findings.filter(({ severity }) => severity === 'error'));
}

function names(name: string, vehicle: string, choices: Choices): string[] {
  const { findings, furniture } = chosen(name, vehicle, choices);
  expect(errors(findings)).toEqual([]);
  return furniture!.units.map((unit) => unit.name);
}

describe.each(['two-singles-long', 'two-singles-short', 'weekend-dog-long', 'weekend-dog-short'])(
  'the order %s',
  (name) => {
    it('has neither errors nor warnings', () => {
      const { findings } = furnish(demoOrder(library, name), library);
      expect(messages(findings.filter(({ severity }) => severity !== 'caution'))).toEqual([]);
    });
  },
);

describe('in a van that is 20 mm narrower', () => {
  const floor = ['height: 0, width: 1760', 'height: 0, width: 1740'] as const;
  const narrow = demoLibrary(['vehicles/van-short.yaml', ...floor], ['vehicles/van-long.yaml', ...floor]);

  it.each<[string, Choices, string]>([
    ['two-singles-long', { bed_width: 650 }, 'the passage between the beds would be narrower than 450 mm'],
    ['weekend-dog-long', { bed_width: 1300 }, 'the walkway beside the bed would be narrower than 450 mm'],
  ])('widths of %s that were wide enough are refused with the reason', (name, choices, sentence) => {
    const refused = (of: typeof library) => errors(chosen(name, 'van-long', choices, of).findings).join('\n');
    expect(refused(narrow)).toContain(sentence);
    expect(refused(library)).not.toContain(sentence);
  });
});

describe('beds along the walls', () => {
  const beds = (vehicle: string, choices: Choices) => chosen('two-singles-long', vehicle, choices);

  it.each<[string, Choices, string]>([
    ['a passage of 400 mm', { bed_width: 680 }, 'it may go from 550 up to 655 mm'],
    ['a fridge beside long beds', { bed_length: 1900 }, 'the beds leave no room for a fridge'],
    ['beds right under the lockers', { bed_height: 740 }, 'it may go from 500 up to 730 mm'],
    [
      'a wide sink in a short cupboard',
      { bed_length: 1890, fridge: 'none', sink: 'large' },
      'the sink is too wide',
    ],
    [
      'toilet and gas locker',
      { toilet: 'portable' },
      'the end of the passage has room for the toilet or the gas locker',
    ],
    [
      'three persons in two beds',
      { persons: 3, cab_seats: 3 },
      'there are fewer sleeping places than persons',
    ],
    [
      'three persons on two seats',
      { persons: 3, between: 'bridge' },
      'there are fewer seats with belts than persons',
    ],
  ])('refuse %s in the short van', (_what, choices, sentence) => {
    expect(errors(beds('van-short', choices).findings).join('\n')).toContain(sentence);
  });

  it('put the length of the long van to use', () => {
    const short = names('two-singles-long', 'van-short', {});
    const long = names('two-singles-long', 'van-long', {});
    expect(long.filter((name) => !short.includes(name))).toEqual(['galley drawers', 'tall cupboard']);
    const without = names('two-singles-long', 'van-long', { fridge: 'none' });
    expect(without).toEqual(expect.arrayContaining(['wardrobe', 'tall cupboard']));
  });

  it('close the rear hatches where cubby or gas locker stand before them', () => {
    const flaps = (choices: Choices) =>
      beds('van-long', { cooker: 'electric', ...choices })
        .furniture!.units.filter((unit) => unit.unit === 'single-bed')
        .map((unit) => unit.panels.filter((panel) => panel.name.endsWith('flap')).length);
    expect(flaps({})).toEqual([3, 3]);
    expect(flaps({ toilet: 'portable' })).toEqual([2, 2]);
    expect(flaps({ cooker: 'gas-one-burner' })).toEqual([2, 2]);
  });

  it('give the ledges of the bridge wood to be screwed to', () => {
    const { furniture } = beds('van-short', { between: 'bridge' });
    const of = (name: string) => furniture!.units.find((unit) => unit.name === name)!.panels;
    const box = (unit: string, panel: string) => of(unit).find(({ name }) => name === panel)!.placeBox;
    const ledges = [box('bed bridge', 'rear ledge'), box('bed bridge', 'front ledge')];
    const rails = [box('left bed', 'packing rail'), box('right bed', 'packing rail')];
    const gaps = rails.map((rail) =>
      Math.min(...ledges.map((ledge) => Math.max(ledge.y[0] - rail.y[1], rail.y[0] - ledge.y[1]))),
    );
    // A screw draws the one millimetre together that the rail, as thick as a flap, stands back.
    expect(gaps).toEqual([1000, 1000]);
    for (const ledge of ledges) expect(ledge.z).toEqual(rails[0]!.z);
  });

  it('count who rides', () => {
    expect(beds('van-long', { cab_seats: 3 }).furniture!.seats).toBe(3);
  });
});

describe('benches and a boot', () => {
  const van = (vehicle: string, choices: Choices) => chosen('weekend-dog-short', vehicle, choices);

  it.each<[string, Choices, string]>([
    ['a bed as wide as leaves no walkway', { bed_width: 1320 }, 'it may go from 1120 up to 1310 mm'],
    ['a dog before a gas locker', { cooker: 'gas-one-burner' }, 'leaves the dog less than 600 mm'],
    ['fridge and toilet', { toilet: 'portable' }, 'the short van has one place behind the benches'],
    ['benches as seats for the road', { persons: 4 }, 'there are fewer seats with belts than persons'],
    ['three sleepers in a narrow bed', { sleepers: 3 }, 'there are fewer sleeping places than sleepers'],
    ['high benches under the locker', { bench_height: 415 }, 'it may go from 340 up to 400 mm'],
    ['a large sink beside a wide boot', { sink: 'large', boot_width: 505 }, 'the sink is too wide'],
  ])('refuse %s in the short van', (_what, choices, sentence) => {
    expect(errors(van('van-short', choices).findings).join('\n')).toContain(sentence);
  });

  it('put the length of the long van to use', () => {
    const short = names('weekend-dog-short', 'van-short', {});
    const long = names('weekend-dog-short', 'van-long', {});
    expect(long.filter((name) => !short.includes(name))).toEqual(['further cupboard']);
    const toilet = names('weekend-dog-short', 'van-long', { toilet: 'portable' });
    expect(toilet).toEqual(expect.arrayContaining(['fridge housing', 'toilet cubby', 'front divider']));
  });

  it('stand a gas locker only where the cooker needs one, and let it open to the rear doors', () => {
    const stands = (cooker: string) => names('weekend-dog-short', 'van-long', { cooker, boot: 'load' });
    expect(stands('gas-one-burner')).toContain('gas locker');
    for (const cooker of ['none', 'spirit', 'electric']) expect(stands(cooker)).not.toContain('gas locker');
    const { furniture } = van('van-long', { cooker: 'gas-one-burner', boot: 'load' });
    const locker = furniture!.units.find((unit) => unit.name === 'gas locker')!;
    expect(locker.facing).toBe('rear');
    const behind = furniture!.units.filter(
      (unit) => unit.placeOutside.x[1] > locker.placeOutside.x[1] && unit.placeOutside.z[0] === 0,
    );
    expect(behind.map(({ name }) => name)).toEqual([]);
  });

  it('count the seats of a seat-bed by its width', () => {
    const seats = (width: number) =>
      van('van-long', { seating: 'seat-bed', bed_width: width }).furniture!.seats;
    expect([1120, 1200, 1259, 1260, 1290].map(seats)).toEqual([4, 4, 4, 5, 5]);
    expect(van('van-long', { bed_width: 1290 }).furniture!.seats).toBe(2);
  });

  it('leave the floor of the dog space free', () => {
    const { furniture } = van('van-short', {});
    const space = furniture!.units.find((unit) => unit.name === 'dog space')!;
    const middle = (axis: 'x' | 'y') => (space.placeOutside[axis][0] + space.placeOutside[axis][1]) / 2;
    const over = furniture!.units.flatMap((unit) =>
      unit.panels.filter(({ placeBox: { x, y, z } }) => {
        const covers = x[0] < middle('x') && middle('x') < x[1] && y[0] < middle('y') && middle('y') < y[1];
        return covers && z[0] < 800_000;
      }),
    );
    expect(over.map((panel) => panel.id)).toEqual([]);
  });

  it('make a bed without a step from benches and bridge', () => {
    const { furniture } = van('van-short', { bench_height: 360 });
    const tops = ['front bench', 'rear bench', 'bed bridge'].map((name) => {
      const unit = furniture!.units.find((each) => each.name === name)!;
      const lying = unit.panels.filter((panel) => /^(lid|board)/.test(panel.name));
      return new Set(lying.map((panel) => panel.placeBox.z[1]));
    });
    expect(tops).toEqual([new Set([360_000]), new Set([360_000]), new Set([360_000])]);
  });
});
