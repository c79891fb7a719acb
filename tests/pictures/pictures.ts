import { drawCutPlan } from '../../src/drawing/cutPlan.ts';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { measure } from '../drawing/drawingTools.ts';
import { randomPlan, stripPlan, type Wanted } from '../drawing/planFixtures.ts';

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

/** The named pictures: each has been looked at, and is compared byte by byte afterwards. */
export const pictures: Record<string, () => Drawing[]> = {
  'cut-plan-dense': () => {
    const { group, sheet } = stripPlan(galley, {}, { copies: 2 });
    return drawCutPlan(group, sheet, { measure, job: 'demo long van', owner: 'Workshop of the demo' });
  },
  'cut-plan-wide-sheet': () => {
    const { group, sheet } = stripPlan(
      galley.map((w) => ({ ...w, count: (w.count ?? 1) * 2 })),
      { length: 2800, width: 2070, kerf: 4.4 },
    );
    return drawCutPlan(group, sheet, { measure, job: 'demo long van' });
  },
  'cut-plan-cross-grain': () => {
    const { group, sheet } = stripPlan(galley.slice(0, 8), { length: 1220, width: 2440, grain: 'width' });
    return drawCutPlan(group, sheet, { measure, job: 'demo long van' });
  },
  'cut-plan-awkward-names': () => {
    const { group, sheet } = randomPlan(5);
    return drawCutPlan(group, sheet, { measure, job: 'names <with> "quotes" & more' });
  },
};
