import { describe, expect, it } from 'vitest';
import { panelOnBench } from '../../../src/basics/panelOnBench.ts';
import { numberPanels } from '../../../src/documents/cuttingList.ts';
import { keptPieces } from '../../../src/documents/offcutsKept.ts';
import { readPieceCode } from '../../../src/documents/panelStickerCode.ts';
import { labelledPieces } from '../../../src/documents/panelStickerPieces.ts';
import type { PlanFile, PlanGroup } from '../../../src/model/plan.ts';
import { plannedOrder } from '../../helpers/demoPlan.ts';
import { demoLibrary } from '../../helpers/demoVan.ts';
import { stickersOf } from './stickerFixtures.ts';

const demo = plannedOrder('demo-short');
const twoVans = plannedOrder('demo-short', ['count: 1', 'count: 2']);

function tally<T>(all: readonly T[]): Map<T, number> {
  const counts = new Map<T, number>();
  for (const one of all) counts.set(one, (counts.get(one) ?? 0) + 1);
  return counts;
}

describe.each([
  ['one van', demo],
  ['two vans', twoVans],
] as const)('the pieces of %s that get labels', (_, { job, proven }) => {
  const { plan } = proven;
  const pieces = labelledPieces(plan, job.name);

  it('are every panel, as often as it is made, and every offcut that is kept', () => {
    const panels = pieces.flatMap((piece) => (piece.is === 'panel' ? [piece.panel.panel.id] : []));
    expect(tally(panels)).toEqual(new Map(numberPanels(plan).map(({ panel }) => [panel.id, panel.count])));
    const kept = plan.groups.flatMap((group) =>
      group.sheets.flatMap((sheet) => sheet.pieces.map(({ is }) => (is === 'offcut' ? sheet.copies : 0))),
    );
    expect(pieces.filter(({ is }) => is === 'offcut')).toHaveLength(kept.reduce((sum, one) => sum + one, 0));
  });

  it('have a text each of their own, that says which they are', () => {
    expect(new Set(pieces.map(({ code }) => code)).size).toBe(pieces.length);
    for (const piece of pieces) {
      const read = readPieceCode(piece.code);
      if (piece.is === 'panel')
        expect(read).toMatchObject({ number: piece.panel.number, piece: piece.piece });
      else if (piece.is === 'offcut')
        expect(read).toMatchObject({ sheet: piece.sheet.number, copy: piece.copy });
    }
  });

  it('are panels first, then offcuts', () => {
    const kinds = pieces.map(({ is }) => is);
    expect(kinds).toEqual([...kinds].sort((a, b) => (a === b ? 0 : a === 'panel' ? -1 : 1)));
  });

  it('come sheet after sheet as they are set free', () => {
    const group = plan.groups[0]!;
    const first = group.sheets[0]!;
    const freed = first.steps.flatMap((step) => (step.cut === 'trim' ? [step.leaves] : step.gives));
    const own = pieces.flatMap((piece) =>
      piece.is === 'panel' && piece.sheet === first && piece.copy === 1
        ? [freed.indexOf(piece.ending.piece)]
        : [],
    );
    expect(own.length).toBeGreaterThan(1);
    expect(own).toEqual([...own].sort((a, b) => a - b));
  });
});

/** Three equal sheets of two panels each, two of them sawn on each other. */
function stackedGroup(): PlanGroup {
  const group = structuredClone(demo.proven.plan.groups[0]!) as PlanGroup;
  const panel = { ...group.panels[0]!, id: 'a', name: 'a', count: 3 };
  const step = {
    cut: 'rip',
    piece: 'sheet',
    blade: 'length',
    fence: 100,
    gives: ['A', 'B'],
    take: 3,
  } as const;
  const pieces = ['A', 'B'].map(
    (piece, index) =>
      ({ is: 'panel', piece, panel: index === 0 ? 'a' : 'b', lengthAlong: 'length' }) as const,
  );
  return {
    ...group,
    id: 'ply',
    panels: [panel, { ...panel, id: 'b', name: 'b' }],
    sheets: [
      {
        ...group.sheets[0]!,
        number: 1,
        copies: 3,
        start: 'sheet',
        steps: [{ ...step, gives: [...step.gives] }],
        // The plan's list is not in the order of sawing.
        pieces: [pieces[1]!, pieces[0]!],
      },
    ],
    stacks: [{ times: 1, sheets: [{ number: 1, copies: 2 }] }],
  };
}

describe('sheets in a stack', () => {
  it('give the pieces that lie on each other together, then those that are sawn singly', () => {
    const plan: PlanFile = { ...demo.proven.plan, groups: [stackedGroup()] };
    const order = labelledPieces(plan, 'job').map((piece) =>
      piece.is === 'panel' ? `${piece.panel.panel.name}${piece.copy}` : '',
    );
    expect(order).toEqual(['a1', 'a2', 'b1', 'b2', 'a3', 'b3']);
  });
});

describe('what stands on a label', () => {
  const stickers = stickersOf(demo);
  const linesOf = (heading: string, unit: string) => {
    const sticker = stickers.find(
      (one) => one.heading === heading && one.lines[0]!.text.startsWith(`${unit} · `),
    )!;
    return sticker.lines.map((line) => line.text);
  };

  it('is all that the next person at the bench has to know', () => {
    const dining = demo.proven.plan.groups[0]!.panels.find((panel) => panel.id === 'dining table/top')!;
    expect(linesOf('top', 'dining table')).toEqual([
      'dining table · demo-short',
      'Demonstration order, short van',
      `finished ${dining.finishedLength}\u00a0×\u00a0${dining.finishedWidth}`,
      `cut ${dining.length}\u00a0×\u00a0${dining.width}\u00a0× ${demo.proven.plan.groups[0]!.thickness}`,
      'poplar-20, white-stone',
      'L1 W1 W2: White stone edging 25 mm',
      'next: edge → assemble',
    ]);
  });

  it('names grooves, cut-outs and drilling among the next steps just where the panel has them', () => {
    const { units } = demo.job.ordered!.furniture;
    const { edgings } = demoLibrary();
    const panels = units.flatMap((unit) => unit.panels);
    const numbers = new Map(
      numberPanels(demo.proven.plan).map(({ panel, number }) => [panel.id, String(number)]),
    );
    for (const panel of panels) {
      const sticker = stickers.find(({ mark }) => mark === numbers.get(panel.id))!;
      const next = sticker.lines.at(-1)!.text;
      // What the drawings for drilling show of grooves.
      const { panels: unit } = units.find((one) => one.panels.includes(panel))!;
      const { grooves } = panelOnBench(panel, unit, edgings);
      expect([next.includes('groove'), next.includes('cut out'), next.includes('drill')]).toEqual([
        grooves.length > 0,
        panel.cutOuts.length > 0,
        panel.holes.length + (panel.edgeHoles ?? []).length > 0,
      ]);
      expect(sticker.picture.openings).toHaveLength(panel.cutOuts.length);
    }
    expect(panels.some((panel) => panel.cutOuts.length > 0)).toBe(true);
  });

  it('says which of several it is', () => {
    const sticker = stickersOf(twoVans).find(({ code }) => code.endsWith('/1/2'))!;
    expect(sticker.lines[0]!.text).toContain('piece 2 of 2');
  });

  it('is in inches where inches are asked for', () => {
    const inches = stickersOf(demo, 'en', 'inches');
    // 700 mm are 27.559 in, 550 mm are 21.654 in; in 64ths 27 36/64 and 21 42/64.
    expect(inches[0]!.lines.map((line) => line.text)).toContain(
      'finished 27\u00a09/16"\u00a0×\u00a021\u00a021/32"',
    );
  });

  it('is in German where German is asked for', () => {
    const german = stickersOf(demo, 'de');
    expect(german[0]!.lines.map((line) => line.text)).toContain('weiter: Kante → montieren');
    expect(german.at(-1)!.fillIn).toBe('eingelagert am');
    expect(german.at(-1)!.mark).toBe('REST');
  });

  it('tells of an offcut its name on the list, its grain along one of its sizes, and leaves room for a date', () => {
    const offcuts = stickers.filter(({ picture }) => picture.kind === 'offcut');
    expect(offcuts.length).toBeGreaterThan(0);
    for (const { fillIn, picture, lines } of offcuts) {
      expect(fillIn).toBe('put back on');
      const along = { length: picture.lengthUm / 1000, width: picture.widthUm / 1000, none: null }[
        picture.grain
      ];
      const said = along === null ? 'no grain' : `grain along ${along}`;
      expect(lines.map((line) => line.text)).toContain(said);
    }
  });
});

/** An order whose file asks for the pieces of its cut-outs. */
const kept = plannedOrder('two-singles-long');

describe.each([
  ['demo-short', demo],
  ['two-singles-long, which keeps the pieces of its cut-outs', kept],
] as const)('the labels of offcuts of %s', (_, planned) => {
  const offcuts = stickersOf(planned).filter(({ picture }) => picture.kind === 'offcut');

  it('have the names, sizes and grain of the list of offcuts', () => {
    const listed = keptPieces(planned.proven.plan).flatMap((piece) =>
      Array.from({ length: piece.count }, () => [piece.name, piece.length, piece.width, piece.grain]),
    );
    const labelled = offcuts.map(({ heading, picture }) => [
      heading,
      picture.lengthUm / 1000,
      picture.widthUm / 1000,
      picture.grain,
    ]);
    expect(labelled.map(String).sort()).toEqual(listed.map(String).sort());
  });

  it('say out of which panel they fell, where they did', () => {
    for (const { code, lines, fillIn } of offcuts) {
      const said = code.includes('/OUT/')
        ? /^from two-singles-long, opening of panel \d+$/
        : /^from [\w-]+, cut plan \d+/;
      expect(lines.at(-1)!.text).toMatch(said);
      expect(fillIn).toBe('put back on');
    }
    expect(offcuts.some(({ code }) => code.includes('/OUT/'))).toBe(planned === kept);
  });
});
