import { mmToUm } from '../basics/lengths.ts';
import type { PlanGroup, PlanSheet } from '../model/plan.ts';
import type { CutPlanWords, DrawingWords } from './drawingWords.ts';
import { printLength, printNamedLength, printSetting, type Units } from './lengthsInWords.ts';
import { plainText } from './lettering.ts';
import { pageField, type TitleField } from './page.ts';
import type { SawnSheet } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import { togetherWords } from './stackWords.ts';

export interface CutPlanTitle {
  readonly group: PlanGroup;
  readonly plan: PlanSheet;
  readonly sawn: SawnSheet;
  readonly view: SheetView;
  readonly options: {
    readonly job: string;
    readonly owner?: string;
    readonly words: DrawingWords;
    readonly pageNumber?: 'drawn' | 'left out';
  };
  readonly units: Units;
  readonly title: (id: string) => string;
  readonly page: number;
  readonly pages: number;
}

/** Board, finish and thickness on one line; the thickness is left out where the board's words already say it. */
export function groupWords(group: PlanGroup, title: (id: string) => string, units: Units): string {
  // A plain list may leave the thickness out.
  const thickness = group.thickness === 0 ? '' : printNamedLength(mmToUm(group.thickness), units);
  return [thickness, title(group.board), title(group.finish)].filter((text) => text !== '').join(' · ');
}

function trimWords(sawn: SawnSheet, units: Units, { trim }: CutPlanWords): string {
  const { left, right, near, far } = sawn.stock.trim;
  const print = (mm: number) => (units === 'mm' ? printSetting : printLength)(mmToUm(mm), units);
  if (left === right && left === near && left === far) return left === 0 ? trim.none : trim.all(print(left));
  return trim.each({ left: print(left), right: print(right), near: print(near), far: print(far) });
}

/** Rules of the saw that the plan keeps, where it has them. */
function sawRules({ saw }: PlanGroup, units: Units, { sawRules: says }: CutPlanWords): string[] {
  const print = (mm: number) => printLength(mmToUm(mm), units);
  const { longestCut, smallestPart } = saw;
  return [
    ...(longestCut === undefined || longestCut === null ? [] : [says.longestCut(print(longestCut))]),
    ...(smallestPart === undefined || smallestPart === 0 ? [] : [says.smallestPart(print(smallestPart))]),
  ];
}

/** The title block of a cut plan: fields of ISO 7200, and what the sawyer sets up before the first cut. */
export function cutPlanTitle(t: CutPlanTitle): TitleField[][] {
  const { group, plan, sawn, units } = t;
  const short = (um: number) => printLength(um, units);
  const { page: heads, cutPlan: says } = t.options.words;
  // An offcut has to be found in the rack, and is there once.
  const isSingle = sawn.stock.kind === 'offcut' && plan.copies === 1;
  return [
    [
      { heading: heads.workshop, content: plainText(t.options.owner ?? ''), weight: 48 },
      { heading: heads.job, content: plainText(t.options.job), weight: 72 },
      { heading: heads.document, content: says.document, weight: 28 },
      { heading: heads.date, content: '', weight: 32 },
    ],
    [
      { heading: says.board, content: groupWords(group, t.title, units), weight: 86 },
      {
        heading: says.stock(sawn.stock.kind),
        content: `${short(sawn.raw.x1)} × ${short(sawn.raw.y1)}`,
        weight: 40,
      },
      { heading: says.grain, content: says.grainRuns[sawn.stock.grain], weight: 27 },
      {
        heading: heads.scaleAndUnits(units),
        content: `1 : ${t.view.reduction}`,
        weight: 27,
      },
    ],
    [
      {
        heading: says.saw,
        content: [
          plainText(group.saw.name),
          says.kerf(printSetting(mmToUm(group.saw.kerf), units)),
          trimWords(sawn, units, says),
          ...sawRules(group, units, says),
        ].join(', '),
        weight: isSingle ? 60 : 86,
      },
      isSingle
        ? { heading: says.label, content: plainText(sawn.stock.id), weight: 66 }
        : {
            heading: says.alike,
            content: togetherWords(group, plan, says) ?? says.sheets(plan.copies),
            weight: 40,
            strong: true,
          },
      {
        heading: says.document,
        content: heads.of(plan.number, group.sheets.length),
        weight: 27,
        strong: true,
      },
      ...pageField(t.options, t.page, t.pages, 27),
    ],
  ];
}
