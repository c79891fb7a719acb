import { mmToUm } from '../basics/lengths.ts';
import type { PlanGroup, PlanSheet } from '../model/plan.ts';
import { printSetting, type Units } from './lengthsInWords.ts';
import { plainText } from './lettering.ts';
import type { TitleField } from './page.ts';
import type { SawnSheet } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';

export interface CutPlanTitle {
  readonly group: PlanGroup;
  readonly plan: PlanSheet;
  readonly sawn: SawnSheet;
  readonly view: SheetView;
  readonly options: { readonly job: string; readonly owner?: string };
  readonly units: Units;
  readonly title: (id: string) => string;
  readonly page: number;
  readonly pages: number;
}

/** Board, finish and thickness on one line; the thickness is left out where the board's words already say it. */
export function groupWords(group: PlanGroup, title: (id: string) => string, units: Units): string {
  const thickness = `${printSetting(mmToUm(group.thickness), units).replace(/\.0$/, '')}${units === 'mm' ? ' mm' : ''}`;
  return [thickness, title(group.board), title(group.finish)].filter((text) => text !== '').join(' · ');
}

function trimWords(sawn: SawnSheet, units: Units): string {
  const { left, right, near, far } = sawn.stock.trim;
  const print = (mm: number) => printSetting(mmToUm(mm), units);
  if (left === right && left === near && left === far)
    return left === 0 ? 'no trim' : `trim ${print(left)} all round`;
  return `trim left ${print(left)}, right ${print(right)}, near ${print(near)}, far ${print(far)}`;
}

/** The title block of a cut plan: fields of ISO 7200, and what the sawyer sets up before the first cut. */
export function cutPlanTitle(t: CutPlanTitle): TitleField[][] {
  const { group, plan, sawn, units } = t;
  const short = (um: number) => printSetting(um, units).replace(/\.0$/, '');
  const grain = { length: 'along length', width: 'along width', none: 'none' }[sawn.stock.grain];
  const stockWord = sawn.stock.kind === 'offcut' ? 'Offcut from stock' : 'Sheet';
  return [
    [
      { heading: 'Workshop', content: plainText(t.options.owner ?? ''), weight: 48 },
      { heading: 'Job', content: plainText(t.options.job), weight: 72 },
      { heading: 'Document', content: 'Cut plan', weight: 28 },
      { heading: 'Date', content: '', weight: 32 },
    ],
    [
      { heading: 'Board and finish', content: groupWords(group, t.title, units), weight: 86 },
      {
        heading: `${stockWord}, length × width`,
        content: `${short(sawn.raw.x1)} × ${short(sawn.raw.y1)}`,
        weight: 40,
      },
      { heading: 'Grain', content: grain, weight: 27 },
      {
        heading: units === 'mm' ? 'Scale, sizes in mm' : 'Scale, sizes in inches',
        content: `1 : ${t.view.reduction}`,
        weight: 27,
      },
    ],
    [
      {
        heading: 'Saw',
        content: `${plainText(group.saw.name)}, kerf ${printSetting(mmToUm(group.saw.kerf), units)}, ${trimWords(sawn, units)}`,
        weight: 86,
      },
      {
        heading: 'Cut alike',
        content: plan.copies === 1 ? '1 sheet' : `${plan.copies} sheets`,
        weight: 40,
        strong: true,
      },
      { heading: 'Cut plan', content: `${plan.number} of ${group.sheets.length}`, weight: 27, strong: true },
      { heading: 'Page', content: `${t.page} of ${t.pages}`, weight: 27 },
    ],
  ];
}
