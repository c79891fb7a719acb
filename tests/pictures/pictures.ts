import { panelOnBench } from '../../src/basics/panelOnBench.ts';
import { drawCutPlan } from '../../src/drawing/cutPlan.ts';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { drawOverview } from '../../src/drawing/overview.ts';
import { drawPanels } from '../../src/drawing/panelDrawing.ts';
import { drawUnit } from '../../src/drawing/unitViews.ts';
import { drawLayout } from '../../src/drawing/vehicleViews.ts';
import { readLibrary } from '../../src/library/index.ts';
import { contactSheetOf } from '../../src/pipeline/drawUnitsOfLibrary.ts';
import { measure, words } from '../drawing/drawingTools.ts';
import { matchedPlan, randomPlan, stripPlan, type Wanted } from '../drawing/planFixtures.ts';
import { alone, demoLibrary, demoOrder, furnish, libraryFiles, must } from '../helpers/demoVan.ts';
import { pageOfLabels } from './labels.ts';

/** Invented panels of a galley, with the strips and blocks that make a sheet hard to read. */
const galley: Wanted[] = [
  { name: 'left side', unit: 'galley sink', size: [798.4, 449.2], edged: 'near' },
  { name: 'right side', unit: 'galley sink', size: [798.4, 449.2], edged: 'near' },
  { name: 'left side', unit: 'galley cooker', size: [798.4, 449.2], edged: 'near' },
  { name: 'door', unit: 'galley sink', size: [597, 397], edged: 'near far left right' },
  {
    name: 'drawer front',
    unit: 'galley drawers',
    size: [196.5, 397],
    edged: 'near far left right',
    count: 3,
  },
  { name: 'bottom', unit: 'galley sink', size: [569.2, 430], edged: 'near' },
  { name: 'rail', unit: 'galley sink', size: [569.2, 80], count: 2 },
  { name: 'rail', unit: 'galley cooker', size: [569.2, 80], count: 2 },
  { name: 'plinth', unit: 'galley', size: [1200, 60], edged: 'near' },
  { name: 'drawer side', unit: 'galley drawers', size: [380, 120], grain: 'none', count: 4 },
  { name: 'drawer back', unit: 'galley drawers', size: [350, 120], grain: 'none', count: 2 },
  { name: 'shelf', unit: 'wardrobe', size: [460, 300], edged: 'near', count: 2 },
  { name: 'fixing strip', unit: 'overhead locker', size: [700, 35], grain: 'none', count: 4 },
  { name: 'glazing bead', unit: 'overhead locker', size: [300, 22], grain: 'none', count: 6 },
  { name: 'block', unit: 'bed', size: [60, 60], grain: 'none', count: 8 },
];

const smallParts: Wanted[] = [
  { name: 'drawer side', unit: 'galley drawers', size: [380, 120], grain: 'none', count: 12 },
  { name: 'drawer back', unit: 'galley drawers', size: [350, 120], grain: 'none', count: 6 },
  { name: 'rail', unit: 'galley sink', size: [569.2, 80], count: 8 },
  { name: 'plinth', unit: 'galley', size: [1200, 60], edged: 'near', count: 2 },
  { name: 'locker divider', unit: 'overhead locker', size: [298, 260], edged: 'near', count: 6 },
  { name: 'batten', unit: 'bed base', size: [700, 50], count: 4, edging: 'grey 2', edged: 'far' },
];

const twice = (wanted: readonly Wanted[]) => wanted.map((w) => ({ ...w, count: (w.count ?? 1) * 2 }));

const furnitureOptions = { measure, words, job: 'demonstration', titles: new Map<string, string>() };

function unitAlone(id: string): Drawing[] {
  const library = demoLibrary();
  return drawUnit(alone(id, {}, library, demoOrder(library)).unit!, furnitureOptions);
}

function layoutOf(name: string): Drawing[] {
  const library = demoLibrary();
  const order = demoOrder(library, name);
  const made = furnish(order, library).furniture!;
  return drawLayout(made, library.vehicles.get(order.vehicle)!, library.finishes, furnitureOptions);
}

/** All units of a library, as the command draws them: with the boards of its first order. */
function unitsOf(name: string): Drawing[] {
  const folder = `parts-libraries/${name}`;
  const files = libraryFiles(folder);
  const first = [...files.keys()].filter((path) => path.startsWith(`${folder}/orders/`)).sort()[0]!;
  const library = must(readLibrary(files, folder));
  const wishes = { language: 'en', lengths: 'mm' } as const;
  return [...must(contactSheetOf({ text: files.get(first)!, file: first }, library, { measure }, wishes))];
}

/** A unit of the demonstration order where it stands, its panels shaped by the wall. */
function unitAtWall(name: string): Drawing[] {
  const library = demoLibrary();
  const made = furnish(demoOrder(library), library).furniture!;
  return drawUnit(made.units.find((unit) => unit.name === name)!, furnitureOptions);
}

/** A side with an outline and a worktop with openings, one of them large enough to be kept. */
function cutByHand(): Drawing[] {
  const side: Wanted = { name: 'left side', unit: 'wardrobe', size: [1750, 536.8], edged: 'near' };
  const worktop: Wanted = {
    name: 'top',
    unit: 'galley worktop',
    size: [1450, 540],
    edged: 'near left right',
  };
  const { group, sheet } = stripPlan([side, worktop, { ...worktop, size: [700, 540] }]);
  group.panels[0]!.byHand = {
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
  };
  group.panels[1]!.byHand = {
    openings: [
      { name: 'sink', length: [300, 590], width: [90, 460] },
      { name: 'hob', length: [800, 1300], width: [85, 465], kept: { length: 480, width: 360 } },
    ],
  };
  return drawCutPlan(group, sheet, { measure, words, job: 'demo long van' });
}

/**
 * The named pictures. Each has been looked at on A4 in black and white; the SVG beside this file is compared byte by
 * byte, so a change of any drawing has to be looked at again.
 */
/** Panels of a unit that are worked on, as they lie on the bench. */
function panelsOf(id: string): Drawing[] {
  const library = demoLibrary();
  const { panels } = alone(id, {}, library, demoOrder(library)).unit!;
  const drawn = panels
    .map(({ number, name, thicknessUm, grain, count }, index) => {
      const bench = panelOnBench(panels[index]!, panels, library.edgings);
      return { names: [`${number} ${name}`], bench, thicknessUm, grain, count };
    })
    .filter(({ bench }) => bench.holes.length + bench.cutOuts.length + bench.grooves.length > 0);
  return drawPanels(drawn, furnitureOptions);
}

export const pictures: Record<string, () => Drawing[]> = {
  'dense sheet': () => {
    const { group, sheet } = stripPlan(galley, {}, { copies: 2 });
    return drawCutPlan(group, sheet, { measure, words, job: 'demo long van', owner: 'Workshop of the demo' });
  },
  'sheets cut together': () => {
    const { group, sheet } = stripPlan(galley.slice(0, 10), {}, { copies: 2 });
    // The third sheet of the stack differs in names only: what are left sides on the others are right sides on it.
    const other = structuredClone(sheet);
    Object.assign(other, { number: 2, copies: 1 });
    for (const piece of other.pieces) if (piece.is === 'panel' && piece.panel === 'p1') piece.panel = 'p2';
    group.sheets = [sheet, other];
    Object.assign(group.saw, { longestCut: 3200, smallestPart: 50, cuttingHeight: 60 });
    group.stacks = [
      {
        times: 1,
        sheets: [
          { number: 1, copies: 2 },
          { number: 2, copies: 1 },
        ],
      },
    ];
    return drawCutPlan(group, sheet, { measure, words, job: 'demo long van' });
  },
  'forty small panels': () => {
    const { group, sheet } = stripPlan(smallParts);
    return drawCutPlan(group, sheet, { measure, words, job: 'demo long van' });
  },
  'wide sheet': () => {
    const { group, sheet } = stripPlan(twice(galley), { length: 2800, width: 2070, kerf: 4.4 });
    return drawCutPlan(group, sheet, { measure, words, job: 'demo long van' });
  },
  'grain across the sheet': () => {
    const stock = { length: 1220, width: 2440, grain: 'width' } as const;
    const { group, sheet } = stripPlan(galley.slice(0, 8), stock);
    return drawCutPlan(group, sheet, { measure, words, job: 'demo long van' });
  },
  'matched fronts': () => {
    const { group, sheet } = matchedPlan();
    return drawCutPlan(group, sheet, { measure, words, job: 'demo long van' });
  },
  'offcut in inches': () => {
    const stock = { length: 914.4, width: 609.6, trim: 6.4, kind: 'offcut' } as const;
    const { group, sheet } = stripPlan(
      [
        { name: 'lid', size: [457.2, 304.8], edged: 'near' },
        { name: 'base', size: [412, 304.8] },
      ],
      stock,
    );
    return drawCutPlan(group, sheet, { measure, words, job: 'box', units: 'inches' });
  },
  'cut along a rail': () => {
    const { group, sheet } = stripPlan(galley.slice(0, 12), { kerf: 2.2 });
    Object.assign(group.saw, { name: 'hand-held saw on a rail', guidedBy: 'rail' });
    return drawCutPlan(group, sheet, { measure, words, job: 'demo long van' });
  },
  'awkward names': () => {
    const { group, sheet } = randomPlan(18);
    return drawCutPlan(group, sheet, { measure, words, job: 'names <with> "quotes" & more' });
  },
  'cut by hand': cutByHand,
  'wardrobe at the wall': () => unitAtWall('wardrobe'),
  'base cupboard': () => unitAlone('base-cupboard'),
  'bed base': () => unitAlone('bed-base'),
  'gas locker': () => unitAlone('gas-locker'),
  'drawer cupboard': () => unitAlone('drawer-cupboard'),
  'drilled panels': () => panelsOf('base-cupboard'),
  'drilled panels with openings': () => panelsOf('fridge-housing'),
  'units for vans': () => unitsOf('demo-van'),
  'units for a workshop': () => unitsOf('workshop-bench'),
  'long van': () => layoutOf('demo-long'),
  'two single beds': () => layoutOf('two-singles-long'),
  'benches and boot': () => layoutOf('weekend-dog-short'),
  'roof bed': () => layoutOf('roof-bed-long'),
  labels: () => pageOfLabels('99.1x38.1'),
  'small labels in German': () => pageOfLabels('70x37', 'de'),
  overview: () => {
    const { group } = stripPlan(galley, {}, { copies: 2 });
    const others = [smallParts, galley.slice(0, 8), galley.slice(4)].map((wanted, index) => {
      const made = stripPlan(wanted, {}, { number: index + 2, copies: 1 + index });
      const rename = (id: string) => `${index}/${id}`;
      group.panels.push(...made.group.panels.map((panel) => ({ ...panel, id: rename(panel.id) })));
      return {
        ...made.sheet,
        pieces: made.sheet.pieces.map((piece) =>
          piece.is === 'panel' ? { ...piece, panel: rename(piece.panel) } : piece,
        ),
      };
    });
    group.sheets.push(...others);
    return drawOverview(group, { measure, words, job: 'demo long van' });
  },
};

/** File names of the pages of a picture. */
export function fileName(name: string, page: number): string {
  return `${name.replaceAll(' ', '-')}-${page}.svg`;
}
