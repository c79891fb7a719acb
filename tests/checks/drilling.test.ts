import { describe, expect, it } from 'vitest';
import { checkDrilling } from '../../src/checks/drilling.ts';
import type { Panel } from '../../src/model/furniture.ts';
import { alone, demoLibrary, demoOrder } from '../helpers/demoVan.ts';
import { type HoleText, type PanelText, unit, withUnits } from '../helpers/handBuilt.ts';

const library = demoLibrary();
const order = demoOrder(library);

/** A carcass panel of 16.2 mm, 400 along x and 300 along y, lying flat with its broad faces at bottom and top. */
const shelf: PanelText = { x: [0, 400], y: [0, 300], z: [0, 'thickness.carcass'], grain: 'x' };

function drilled(holes: Record<string, HoleText>, more: Partial<PanelText> = {}): Panel {
  const test = unit('test', [400, 300, 16.2], { shelf: { ...shelf, ...more, holes } });
  const { furniture, findings } = alone('test', {}, withUnits(library, test), order);
  const panel = furniture?.units[0]?.panels[0];
  if (panel === undefined) throw new Error(findings.map((finding) => finding.message).join('\n'));
  return panel;
}

function said(holes: Record<string, HoleText>, more: Partial<PanelText> = {}): string[] {
  return checkDrilling(drilled(holes, more)).map(({ severity, message }) => `${severity}: ${message}`);
}

const hole = (
  x: number | string,
  y: number | string,
  diameter: number,
  depth: number | 'through' = 10,
  from: HoleText['from'] = 'top',
): HoleText => ({ at: { x, y }, from, bore: [diameter, depth] });

describe('the drilling check', () => {
  it('finds nothing wrong with holes that a board has room for', () => {
    const rows: Record<string, HoleText> = {
      pin: { ...hole('37 + (i - 1) * 32', 50, 5, 12), repeat: ['i', 10] },
      screw: hole(200, 8.1, 4, 'through'),
      cup: hole(100, 300 - 20.5, 35, 13),
    };
    expect(said(rows)).toEqual([]);
  });

  it('tells how deep a hole may be', () => {
    expect(said({ cup: hole(100, 100, 35, 16.2) })).toEqual([
      'error: the hole “cup” of the shelf of the unit is 16.2 mm deep in a board of 16.2 mm, so it comes out on the other side',
    ]);
    expect(said({ cup: hole(100, 100, 35, 15) })).toEqual([
      'warning: the hole “cup” of the shelf of the unit is 15.0 mm deep in a board of 16.2 mm, which leaves 1.2 mm under it; 1.5 mm are needed',
    ]);
    expect(said({ cup: hole(100, 100, 35, 14.7) })).toEqual([]);
  });

  it('tells holes outside, over the edge and close to it apart', () => {
    expect(said({ cup: hole(100, 320, 35) })).toEqual([
      'error: the hole “cup” of the shelf of the unit lies outside the panel',
    ]);
    expect(said({ cup: hole(100, 290, 35) })).toEqual([
      'error: the hole “cup” of the shelf of the unit runs 7.5 mm over the edge',
    ]);
    expect(said({ cup: hole(20, 100, 35) })).toEqual([
      'warning: the hole “cup” of the shelf of the unit leaves 2.5 mm of board to the edge; 3.0 mm are needed',
    ]);
    expect(said({ cup: hole(20.5, 100, 35) })).toEqual([]);
  });

  it('measures to the outline where the panel has one', () => {
    const panel = drilled({ pin: hole(50, 50, 5) });
    const point = (alongLengthUm: number, alongWidthUm: number) => ({ alongLengthUm, alongWidthUm });
    const triangle = [point(0, 0), point(400_000, 0), point(400_000, 300_000)];
    const sloping = (x: number, y: number) => {
      const holes = [{ ...panel.holes[0]!, alongLengthUm: x, alongWidthUm: y }];
      return checkDrilling({ ...panel, holes, outline: triangle }).map(({ message }) => message);
    };
    expect(sloping(200_000, 200_000)).toEqual([
      'the hole “pin” of the shelf of the unit lies outside the panel',
    ]);
    // The sloping edge runs along (4, 3): a point (200, 145) is 5 · 4/5 = 4 mm below it, 1.5 mm less the radius.
    expect(sloping(200_000, 145_000)).toEqual([
      'the hole “pin” of the shelf of the unit leaves 1.5 mm of board to the edge; 3.0 mm are needed',
    ]);
    expect(sloping(200_000, 100_000)).toEqual([]);
  });

  it('finds holes in openings and in each other', () => {
    const cutOuts = { sink: { x: [100, 200], y: [100, 200] } } as const;
    expect(said({ pin: hole(150, 150, 5) }, { cutOuts })).toEqual([
      'error: the hole “pin” of the shelf of the unit runs into the cut-out “sink”',
    ]);
    expect(said({ pin: hole(203, 203, 5) }, { cutOuts })).toEqual([
      'warning: the hole “pin” of the shelf of the unit leaves 1.7 mm of board to the cut-out “sink”; 2.0 mm are needed',
    ]);
    expect(said({ a: hole(100, 100, 5), b: hole(103, 104, 8) })).toEqual([
      'error: the hole “b” of the shelf of the unit runs into the hole “a”',
    ]);
    expect(said({ a: hole(100, 100, 5), b: hole(106, 108, 13) })).toEqual([
      'warning: the hole “b” of the shelf of the unit leaves 1.0 mm of board to the hole “a”; 2.0 mm are needed',
    ]);
  });

  it('lets a head be sunk about its screw, and two blind holes pass each other', () => {
    expect(said({ screw: hole(100, 100, 4, 'through'), head: hole(100, 100, 8, 3) })).toEqual([]);
    expect(said({ a: hole(100, 100, 8, 7), b: hole(100, 100, 8, 7, 'bottom') })).toEqual([]);
    expect(said({ a: hole(100, 100, 8, 8), b: hole(100, 100, 8, 7, 'bottom') })).toEqual([
      'error: the hole “b” of the shelf of the unit runs into the hole “a”',
    ]);
    expect(said({ a: hole(100, 100, 8, 7), b: hole(100, 100, 8, 9) })).toEqual([
      'error: the hole “b” of the shelf of the unit runs into the hole “a”',
    ]);
  });

  it('tells a row of holes once', () => {
    const row: HoleText = { ...hole('37 + (i - 1) * 32', 50, 5, 20), repeat: ['i', 10] };
    expect(said({ pin: row })).toEqual([
      'error: the hole “pin 1” of the shelf of the unit is 20.0 mm deep in a board of 16.2 mm, so it comes out on the other side, and 9 more of its row likewise',
    ]);
  });
});
