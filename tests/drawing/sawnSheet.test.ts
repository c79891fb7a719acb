import { describe, expect, it } from 'vitest';
import { sawSheet } from '../../src/drawing/sawnSheet.ts';
import { emptyGroup, matchedPlan, PlanMaker, panelOf, stripPlan } from './planFixtures.ts';

describe('where cuts and pieces lie', () => {
  it('takes trims off each side and cuts from the near left corner', () => {
    // Sheet 1000 × 500, trim 10, kerf 4: usable 980 × 480. Rip at 200 from the near edge, crosscut that strip at 300.
    const group = emptyGroup({ length: 1000, width: 500, kerf: 4 }, [
      panelOf({ name: 'a', size: [300, 200] }, 0),
    ]);
    const maker = new PlanMaker(4);
    let raw = { name: 'sheet', x: 1_000_000, y: 500_000 };
    for (const side of ['left', 'near', 'right', 'far'] as const) raw = maker.trim(raw, side, 10);
    const [strip, rest] = maker.part(raw, 'length', 200_000, 'rip');
    const [panel, off] = maker.part(strip, 'width', 300_000, 'crosscut');
    maker.panel(panel, 'p1', 'length');
    maker.spare(off!);
    maker.spare(rest!);
    const sheet = {
      number: 1,
      stock: 'sheet',
      copies: 1,
      start: 'sheet',
      steps: maker.steps,
      pieces: maker.pieces,
    };
    const sawn = sawSheet(group, sheet);
    const rects = sawn.ends.map((end) => end.piece.rect);
    expect(rects[0]).toEqual({ x0: 10_000, y0: 10_000, x1: 310_000, y1: 210_000 });
    expect(rects[1]).toEqual({ x0: 314_000, y0: 10_000, x1: 990_000, y1: 210_000 });
    expect(rects[2]).toEqual({ x0: 10_000, y0: 214_000, x1: 990_000, y1: 490_000 });
    // The blade of the left trim eats 4 of its 10 mm; 6 fall off as a strip.
    expect(sawn.cuts[0]!.kerf).toEqual({ x0: 6_000, y0: 0, x1: 10_000, y1: 500_000 });
    expect(sawn.trims[0]).toEqual({ x0: 0, y0: 0, x1: 6_000, y1: 500_000 });
    expect(sawn.cuts[2]!.kerf).toEqual({ x0: 990_000, y0: 10_000, x1: 994_000, y1: 500_000 });
    expect(sawn.cuts[4]!.runsAlong).toBe('x');
    expect(sawn.cuts[5]!.kerf).toEqual({ x0: 310_000, y0: 10_000, x1: 314_000, y1: 210_000 });
  });

  it('draws a scrape no wider than it is', () => {
    const group = emptyGroup({ length: 1000, width: 202, trim: 0, kerf: 4 }, []);
    const maker = new PlanMaker(4);
    const [strip] = maker.part({ name: 'sheet', x: 1_000_000, y: 202_000 }, 'length', 200_000, 'rip');
    maker.spare(strip);
    const sheet = {
      number: 1,
      stock: 'sheet',
      copies: 1,
      start: 'sheet',
      steps: maker.steps,
      pieces: maker.pieces,
    };
    expect(sawSheet(group, sheet).cuts[0]!.kerf).toEqual({ x0: 0, y0: 200_000, x1: 1_000_000, y1: 202_000 });
  });

  it('adds up to the sheet: pieces, kerfs and trims', () => {
    for (const { group, sheet } of [
      matchedPlan(),
      stripPlan([{ name: 'side', size: [700, 333.3], count: 5 }], { kerf: 3.2, trim: 12.5 }),
    ]) {
      const sawn = sawSheet(group, sheet);
      const area = (r: { x0: number; y0: number; x1: number; y1: number }) =>
        BigInt(r.x1 - r.x0) * BigInt(r.y1 - r.y0);
      const parts = [
        ...sawn.ends.map((end) => end.piece.rect),
        ...sawn.cuts.map((cut) => cut.kerf),
        ...sawn.trims,
      ];
      expect(parts.reduce((sum, rect) => sum + area(rect), 0n)).toBe(area(sawn.raw));
    }
  });

  it('throws for a stock or a panel that the group does not have', () => {
    const { group, sheet } = stripPlan([{ name: 'side', size: [700, 400] }]);
    expect(() => sawSheet(group, { ...sheet, stock: 'other' })).toThrow(/other/);
    expect(() => sawSheet({ ...group, panels: [] }, sheet)).toThrow(/p1/);
  });
});
