import { makePanelStickers } from '../../src/documents/panelStickers.ts';
import { wordsOf } from '../../src/documents/words/index.ts';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { stickerFormats } from '../../src/drawing/panelStickerFormats.ts';
import { drawStickers } from '../../src/drawing/panelStickers.ts';
import type { PlanFile, PlanGroup, PlanPanel } from '../../src/model/plan.ts';
import { measure } from '../drawing/drawingTools.ts';

const raw = { alongLength: [null, null], alongWidth: [null, null] } as PlanPanel['edging'];

function panel(
  [name, unit]: readonly [string, string],
  [length, width]: readonly [number, number],
  more: Partial<PlanPanel> = {},
): PlanPanel {
  const id = `${unit}/${name}`;
  const sizes = { length, width, finishedLength: length, finishedWidth: width };
  return { id, name, unit, order: 'long-van', ...sizes, count: 1, grain: 'length', edging: raw, ...more };
}

/** Edging of the edges along the length and along the width. */
function edged(
  length: readonly [string | null, string | null],
  width: readonly [string | null, string | null] = [null, null],
): Partial<PlanPanel> {
  return { edging: { alongLength: [...length], alongWidth: [...width] } };
}

const ash = 'light ash edging 19 mm';
const slate = 'slate edging 25 mm';

const panels: readonly PlanPanel[] = [
  panel(['left side', 'galley sink'], [798.4, 449.2], { ...edged([ash, null]), count: 2 }),
  panel(['top', 'galley worktop'], [1450, 540], {
    ...edged([slate, null], [slate, slate]),
    byHand: {
      openings: [
        { name: 'sink', length: [300, 590], width: [90, 460] },
        { name: 'hob', length: [800, 1300], width: [85, 465], kept: { length: 480, width: 360 } },
      ],
    },
  }),
  panel(['door', 'wardrobe'], [897, 397], edged([ash, ash], [ash, ash])),
  panel(['left side', 'wardrobe'], [1750, 536.8], {
    ...edged([ash, null]),
    byHand: {
      outline: [
        [0, 0],
        [1750, 0],
        [1750, 436.8],
        [1500, 486.8],
        [1000, 531.8],
        [500, 536.8],
        [0, 506.8],
      ],
      openings: [],
    },
  }),
  panel(['fixing strip', 'overhead locker'], [2400, 30], edged([ash, slate])),
  panel(['shelf', 'wardrobe'], [460, 300], edged([ash, null])),
  panel(['back', 'galley sink'], [590, 798], { grain: 'none' }),
  panel(['plinth', 'galley'], [1200, 60], edged([ash, null])),
  panel(['block', 'bed'], [60, 60], { grain: 'none' }),
  panel(
    ['rear lid of the long bench beside the sliding door, hinged at the left, with slots', 'bench'],
    [600, 900],
    {
      ...edged([ash, slate], ['chestnut edging 25 mm', 'white edging 19 mm']),
    },
  ),
  panel(['Schubkasten-Vorderstück 抽屉', 'galley drawers'], [396.5, 196.5], edged([ash, null], [ash, ash])),
];

const group: PlanGroup = {
  id: 'poplar-15-light-ash',
  board: 'Poplar plywood 15 mm',
  finish: 'light ash',
  thickness: 15.4,
  saw: { name: 'panel saw', kerf: 3.2, firstCut: 'either', turns: null } as PlanGroup['saw'],
  panels: [...panels],
  runs: [],
  pricedBy: 'price',
  stock: [
    {
      id: 'sheet',
      kind: 'sheet',
      length: 2500,
      width: 1250,
      grain: 'length',
      price: 1,
      count: null,
      trim: { left: 10, right: 10, near: 10, far: 10 },
    },
  ],
  sheets: [
    {
      number: 1,
      stock: 'sheet',
      copies: 1,
      start: 'sheet',
      steps: [],
      pieces: [
        ...panels.flatMap(({ id, count }, index) =>
          Array.from(
            { length: count },
            (_, which) =>
              ({
                is: 'panel',
                piece: `A${index + 1}${'ab'[which]}`,
                panel: id,
                lengthAlong: 'length',
              }) as const,
          ),
        ),
        { is: 'offcut', piece: 'B2', length: 1180.4, width: 420 },
      ],
    },
  ],
  bound: { sheets: 1, cost: 1, certificate: { method: 'area' } },
  proved: true,
};

const plan: PlanFile = {
  format: 'plywright plan',
  version: 1,
  job: 'Demonstration van',
  currency: 'EUR',
  seed: 1,
  groups: [group],
};

/** A page of labels of invented panels: easy ones, a strip, a square, a shaped one, and names that nobody should give. */
export function pageOfLabels(format: string, language: 'en' | 'de' = 'en'): Drawing[] {
  const stickers = makePanelStickers({
    plan,
    job: 'long-van',
    title: (id) => id,
    words: wordsOf(language).stickers,
    units: 'mm',
  });
  const title = (page: number, of: number) => `Labels, page ${page} of ${of}`;
  return drawStickers(stickers, { format: stickerFormats.get(format)!, first: 1, measure, title });
}
