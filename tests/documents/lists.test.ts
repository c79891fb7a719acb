import { describe, expect, it } from 'vitest';
import { makePlan } from '../../src/cutPlans/index.ts';
import { makeStockGroups } from '../../src/demands/index.ts';
import { CUTTING_LIST_COLUMNS } from '../../src/documents/cuttingList.ts';
import { makeLists, summarise } from '../../src/documents/index.ts';
import { readSheetList } from '../../src/lists/index.ts';
import type { Part } from '../../src/model/part.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import { measurePlan } from '../../src/replay/index.ts';
import { part, saw, supply } from '../helpers/parts.ts';
import { nestOf, spare, stack, wanted } from '../helpers/planText.ts';
import { readCsv } from '../helpers/readCsv.ts';

const edgings = new Map([['grey-1', { title: 'Grey 1 mm', overlengthUm: 70_000, rollM: 50 }]]);
const titles = new Map([
  ['ply', 'Poplar ply'],
  ['grey', 'Pale grey'],
]);

/** Two sheets alike with a door and a shelf each. Usable 2480 × 1230. */
function plan(more: Partial<Part> = {}, on: Partial<SheetSupply> = {}): PlanFile {
  const door = part('d-1', 698, 398, {
    name: 'door',
    unit: 'sink cupboard',
    order: 'first order',
    finishedLengthUm: 700_000,
    finishedWidthUm: 400_000,
    edging: { alongLength: ['grey-1', 'grey-1'], alongWidth: ['grey-1', 'grey-1'] },
    count: 2,
    ...more,
  });
  const shelf = part('s-1', 300, 500, {
    name: 'shelf',
    edging: { alongLength: [null, null], alongWidth: ['lipping', null] },
    count: 2,
  });
  const group = makeStockGroups([door, shelf], [supply(2500, 1250, on)], saw()).groups[0]!;
  const root = stack('y', 2480, 1230, [
    stack('x', 2480, 500, [wanted(1, 300, 500), spare(2176.8, 500, 'offcut')]),
    stack('x', 2480, 398, [wanted(0, 698, 398), spare(1778.8, 398, 'offcut')]),
    spare(2480, 325.6),
  ]);
  const nest = nestOf(group, [{ sheet: 0, copies: 2, root }]);
  return makePlan([{ group, nest }], { job: 'job', currency: 'EUR', seed: 1 });
}

const listsOf = (of: PlanFile) => makeLists(of, { edgings, titles });
const rowsOf = (of: PlanFile, file: string) => readCsv(listsOf(of).get(file)!);

describe('the lists of a job', () => {
  it('are these files', () => {
    expect([...listsOf(plan()).keys()]).toEqual([
      'cutting-list.csv',
      'edging-list.csv',
      'edging-to-buy.csv',
      'sheets-to-buy.csv',
      'offcuts-kept.csv',
      'saw-steps.csv',
    ]);
  });

  it('saw steps: how many sheets lie on each other, how often a step is sawn, and with which other plans', () => {
    const half = stack('x', 2480, 1230, [wanted(0, 1238.4, 1230), wanted(0, 1238.4, 1230)]);
    const parts = [part('a', 1238.4, 1230, { count: 9 }), part('b', 1238.4, 1230, { count: 1 })];
    const group = (cuttingHeightUm: number | null) =>
      makeStockGroups(parts, [supply(2500, 1250)], saw({ cuttingHeightUm })).groups[0]!;
    const of = (cuttingHeightUm: number | null) => {
      const nest = nestOf(group(cuttingHeightUm), [{ sheet: 0, copies: 5, root: half }]);
      const steps = rowsOf(
        makePlan([{ group: group(cuttingHeightUm), nest }], { job: 'job', currency: 'EUR', seed: 1 }),
        'saw-steps.csv',
      );
      const told = steps.map((row) => [row.sheet, row.copies, row.stack, row.sawings, row['with sheets']]);
      return [...new Map(told.map((row) => [row[0], row])).values()];
    };
    // Boards of 15: three of them in 45 mm. Of five sheets, four are a and a, one is a and b.
    expect(of(45_000)).toEqual([
      ['1', '4', '3', '2', '2'],
      ['2', '1', '2', '1', '1'],
    ]);
    expect(of(null).map(([, copies, ...rest]) => [copies, ...rest])).toEqual([
      ['4', '1', '4', ''],
      ['1', '1', '1', ''],
    ]);
  });

  it('cutting list: sawn and finished sizes, edging by edge, sheets it is cut from', () => {
    const rows = rowsOf(plan(), 'cutting-list.csv');
    expect(Object.keys(rows[0]!)).toEqual(CUTTING_LIST_COLUMNS.map(({ key }) => key));
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatchObject({
      number: '1',
      id: 'd-1',
      order: 'first order',
      unit: 'sink cupboard',
      name: 'door',
      board: 'ply',
      thickness: '15',
      'cut length': '698.0',
      'cut width': '398.0',
      grain: 'length',
      count: '2',
      'finished length': '700.0',
      'edging length 2': 'grey-1',
      sheets: '1',
    });
    expect(rows[1]).toMatchObject({ 'edging width 1': 'lipping', 'edging width 2': '' });
  });

  it('edging list: shorter edges before longer ones, an edging at a time', () => {
    const rows = rowsOf(plan(), 'edging-list.csv');
    expect(
      rows.map((row) => [row['pass'], row['edging'], row['number'], row['edge'], row['edge length']]),
    ).toEqual([
      ['1', 'grey-1', '1', 'width 1', '400.0'],
      ['1', 'grey-1', '1', 'width 2', '400.0'],
      ['2', 'grey-1', '1', 'length 1', '700.0'],
      ['2', 'grey-1', '1', 'length 2', '700.0'],
      // Along the width, but the shelf is wider than long.
      ['2', 'lipping', '2', 'width 1', '500.0'],
    ]);
    expect(rows.map((row) => row['strip length'])).toEqual(['470.0', '470.0', '770.0', '770.0', '']);
  });

  it('edging to buy: net metres, with overlength, rolls', () => {
    expect(rowsOf(plan(), 'edging-to-buy.csv')).toEqual([
      {
        edging: 'grey-1',
        description: 'Grey 1 mm',
        strips: '8',
        // 2 doors · 2.2 m, and 8 · 70 mm.
        'net metres': '4.400',
        overlength: '70.0',
        'metres to buy': '4.960',
        roll: '50',
        rolls: '1',
      },
      {
        edging: 'lipping',
        description: '',
        strips: '2',
        'net metres': '1.000',
        overlength: '',
        'metres to buy': '',
        roll: '',
        rolls: '',
      },
    ]);
  });

  it('sheets to buy: with prices, or without where areas were compared', () => {
    expect(rowsOf(plan(), 'sheets-to-buy.csv')).toEqual([
      {
        group: 'ply-grey',
        board: 'ply',
        finish: 'grey',
        thickness: '15',
        description: 'Poplar ply, Pale grey',
        sheet: '2500x1250',
        kind: 'sheet',
        length: '2500.0',
        width: '1250.0',
        grain: 'length',
        count: '2',
        'price each': '100.00',
        price: '200.00',
        currency: 'EUR',
      },
    ]);
    expect(rowsOf(plan({}, { priceMinor: null }), 'sheets-to-buy.csv')[0]).toMatchObject({
      count: '2',
      'price each': '',
      price: '',
      currency: '',
    });
  });

  it('offcuts kept: as a list of sheets for a later job', () => {
    expect(rowsOf(plan(), 'offcuts-kept.csv')).toMatchObject([
      {
        length: '2176.8',
        width: '500.0',
        grain: 'length',
        count: '2',
        kind: 'offcut',
        board: 'ply',
        piece: 'A2',
      },
      {
        length: '1778.8',
        width: '398.0',
        grain: 'length',
        count: '2',
        kind: 'offcut',
        board: 'ply',
        piece: 'B2',
      },
    ]);
  });

  it('offcuts kept: with what is cut by hand out of panels, along the sides of their sheet', () => {
    const opening = { name: 'sink', alongLength: [50_000, 600_000], alongWidth: [40_000, 350_000] } as const;
    const kept = { lengthUm: 530_000, widthUm: 290_000 };
    const job = plan({
      byHand: {
        openings: [
          { ...opening, kept },
          { ...opening, name: 'tap' },
        ],
      },
    });
    const rows = () => rowsOf(job, 'offcuts-kept.csv').filter((row) => row['cut by hand from'] !== '');
    const expected = {
      name: 'ply-grey 1 B1 sink',
      count: '2',
      kind: 'offcut',
      piece: 'B1',
      'cut by hand from': 'd-1',
    };
    expect(rows()).toMatchObject([{ ...expected, length: '530.0', width: '290.0' }]);
    for (const piece of job.groups[0]!.sheets[0]!.pieces) {
      if (piece.is === 'panel') piece.lengthAlong = 'width';
    }
    expect(rows()).toMatchObject([{ ...expected, length: '290.0', width: '530.0' }]);
    const read = readSheetList(listsOf(job).get('offcuts-kept.csv')!, 'offcuts-kept.csv');
    expect(read.ok && read.value).toHaveLength(3);
  });

  it('edging list: an edge that a wall shortens takes less edging', () => {
    const corner = (alongLengthUm: number, alongWidthUm: number) => ({ alongLengthUm, alongWidthUm });
    const outline = [corner(0, 0), corner(698_000, 0), corner(698_000, 300_000), corner(500_000, 398_000)];
    const shaped = plan({ byHand: { outline: [...outline, corner(0, 398_000)], openings: [] } });
    const lengths = rowsOf(shaped, 'edging-list.csv').map((row) => [row.edge, row['edge length']]);
    expect(Object.fromEntries(lengths.filter(([edge]) => edge !== undefined))).toMatchObject({
      'length 1': '700.0',
      'length 2': '502.0',
      'width 2': '302.0',
    });
  });

  it('offcuts kept can be read as a list of sheets', () => {
    const read = readSheetList(listsOf(plan()).get('offcuts-kept.csv')!, 'offcuts-kept.csv');
    expect(read.findings.filter((finding) => finding.severity === 'error')).toEqual([]);
    expect(read.ok && read.value).toMatchObject([
      {
        board: 'ply',
        finish: 'grey',
        thicknessUm: 15_000,
        lengthUm: 2_176_800,
        widthUm: 500_000,
        grain: 'length',
      },
      { kind: 'offcut', count: 2, priceMinor: null },
    ]);
  });

  it('survive names with commas, quotes and line breaks, and disarm formulas', () => {
    const names = ['a,b', 'say "door"', 'two\nlines', 'two\r\nlines', '<b>', "it's", '-5.2', '+3', ' x '];
    for (const name of names) {
      expect(rowsOf(plan({ name }), 'cutting-list.csv')[0]!['name']).toBe(name);
    }
    const formulas = ['=1+1', '@SUM(A1)', '+cmd', '-2+3', '\tx', '\rx', "'=1", '\uff1d1'];
    for (const name of formulas) {
      expect(rowsOf(plan({ name }), 'cutting-list.csv')[0]!['name']).toBe(`'${name}`);
    }
  });
});

describe('the summary', () => {
  it('draws together what the plan and its measures say', () => {
    const of = plan();
    const { groups, job } = summarise(of, measurePlan(of));
    expect(job).toBe('job');
    expect(groups).toEqual([
      {
        group: 'ply-grey',
        board: 'ply',
        finish: 'grey',
        thickness: 15,
        panels: 4,
        sheetCount: 2,
        sheets: [{ stock: '2500x1250', kind: 'sheet', count: 2 }],
        cost: 20_000,
        bound: 0,
        boundCost: 0,
        proved: false,
        withinPercent: 100,
        // (698 · 398 + 300 · 500) / (2500 · 1250)
        yield: 0.136897,
        offcuts: [
          { length: 2176.8, width: 500, grain: 'length', count: 2 },
          { length: 1778.8, width: 398, grain: 'length', count: 2 },
        ],
        // A sheet: 7460 of trims, 2 · 2480 of rips, 500 + 398 of crosscuts.
        sawnMetres: 26.64,
        cuts: 16,
        fenceSettings: 8,
        turns: 1,
        differentSheets: 1,
        // Two strips a sheet, each turned once for its crosscut.
        sawings: { count: 2, stacks: 0, cuts: 16, sawnMetres: 26.64, fenceSettings: 8, pieceTurns: 4 },
        // Four trims and the first rip of each sheet, and the second rip of what 500 of 1230 leave.
        heavyCuts: 12,
        heaviest: { areaM2: 1.802, massKg: null },
        saw: {
          name: 'test saw',
          kerf: 3.2,
          firstCut: 'either',
          turns: null,
          smallestPart: 50,
          longestCut: null,
          cuttingHeight: null,
          guidedBy: 'fence',
        },
      },
    ]);
    // 2480 · 726.8 mm² of the heaviest piece, at 8.25 kg/m².
    expect(summarise(of, measurePlan(of), () => 8.25).groups[0]!.heaviest.massKg).toBe(14.9);
    expect(() => summarise(of, [])).toThrow('ply-grey');
  });

  it('has no prices where areas were compared', () => {
    const of = plan({}, { priceMinor: null });
    expect(summarise(of, measurePlan(of)).groups[0]).toMatchObject({ cost: null, boundCost: null });
  });
});
