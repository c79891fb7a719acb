import { guideOf } from '../../basics/cutGuide.ts';
import { mmToUm } from '../../basics/lengths.ts';
import { type Drawing, drawCutPlan, type PageSize } from '../../drawing/index.ts';
import { printSetting } from '../../drawing/lengthsInWords.ts';
import { namesOfJoined } from '../../drawing/namesOfJoined.ts';
import { namesInStack, plansInStack, stackSizes } from '../../drawing/stackWords.ts';
import type { PlanGroup, PlanPanel, PlanSheet } from '../../model/plan.ts';
import { stepsInWords } from '../stepsInWords.ts';
import type { DrawingsBlock, DrawnPiece, Section, TextBlock, Tick } from './book.ts';
import { type BookFacts, panelText, sizeText } from './subject.ts';

/** A box to tick for every panel from a sheet, as often as the sheet is cut. */
function ticksOf(facts: BookFacts, group: PlanGroup, sheet: PlanSheet): Tick[] {
  const { words, numberOf, units } = facts;
  const panels = new Map(group.panels.map((panel) => [panel.id, panel]));
  const copies = Array.from({ length: sheet.copies }, (_, index) => index + 1);
  return copies.flatMap((copy) =>
    sheet.pieces.flatMap((ending): Tick[] => {
      const panel = ending.is === 'panel' ? panels.get(ending.panel) : undefined;
      if (panel === undefined) return [];
      const number = numberOf(panel.id);
      const text = words.plans.tick(number, panelText(panel), sizeText(panel.length, panel.width, units));
      return [
        {
          key: `${group.id}/${sheet.number}/${copy}/${ending.piece}`,
          text: sheet.copies > 1 ? `${text}  (${words.plans.copy(copy)})` : text,
          panel: number,
          piece: ending.piece,
        },
      ];
    }),
  );
}

/** How the sheets of a plan lie on each other, and what pieces are on the sheets of other plans in the stack. */
function stackBlocks({ words, numberOf }: BookFacts, group: PlanGroup, sheet: PlanSheet): TextBlock[] {
  const stack = stackSizes(group, sheet);
  if (stack === null) return [];
  const says = words.plans;
  const text = (panel: PlanPanel) => `${numberOf(panel.id)} ${panelText(panel)}`;
  const names = namesInStack(group, sheet).flatMap(({ piece, here, others }) =>
    others.map(({ panel, plans }) => says.otherName(piece, text(here), plans, text(panel))),
  );
  return [
    { kind: 'paragraph', text: says.stacked(stack, plansInStack(group, sheet)), strong: true },
    ...(names.length === 0 ? [] : [{ kind: 'list', items: names } as const]),
  ];
}

/** So many pieces of a sheet, offcuts and waste among them, are told apart easily. */
const FEW_PIECES = 24;

/** The cut plan without its table of cuts, as a screen shows it and as large as paper and texts beside it allow. */
function planDrawings(facts: BookFacts, group: PlanGroup, sheet: PlanSheet) {
  const titles = new Map(
    [group.board, group.finish, ...group.panels.flatMap(edgingIds)].map((id) => [id, facts.title(id)]),
  );
  const numbers = new Map(facts.panels.map(({ panel, number }) => [panel.id, number]));
  const drawOn = (page: PageSize, leastReduction: number): Drawing[] =>
    drawCutPlan(group, sheet, {
      measure: facts.measure,
      words: facts.words.drawings,
      units: facts.units,
      job: facts.plan.job,
      titles,
      numbers,
      steps: 'left out',
      pageNumber: 'left out',
      page,
      leastReduction,
    });
  const drawings = drawOn('A4', 0);
  const reductionOf = ([first]: readonly Drawing[]) => first?.reduction ?? 0;
  // On larger paper it may be reduced until it is as small as on A4, and there by a quarter more; a sheet of few pieces stays
  // clear in an even smaller scale, which saves it a page with a few lines only.
  const more = sheet.pieces.length > FEW_PIECES ? 1.25 : 1.6;
  const most = facts.page === 'A4' ? reductionOf(drawings) * more : reductionOf(drawings);
  const tried: Drawing[][] = facts.page === 'A4' ? [drawings] : [];
  const onPaper = (smaller: number): readonly Drawing[] | null => {
    const last = tried[smaller - 1];
    if (last !== undefined && reductionOf(last) >= most) return null;
    tried[smaller] ??= drawOn(facts.page, last === undefined ? 0 : reductionOf(last) + 0.01);
    return reductionOf(tried[smaller]) <= most ? tried[smaller] : null;
  };
  return { drawings, onPaper };
}

function drawingsOf(
  facts: BookFacts,
  group: PlanGroup,
  sheet: PlanSheet,
  ticks: readonly Tick[],
): Omit<DrawingsBlock, 'label' | 'beside'> {
  const { drawings, onPaper } = planDrawings(facts, group, sheet);
  const pieces = (drawings[0]?.pieces ?? []).flatMap(({ piece, box }): DrawnPiece[] => {
    const own = ticks.filter((tick) => tick.piece === piece);
    const panel = own[0]?.panel;
    return panel === undefined ? [] : [{ panel, box, ticks: own.map((tick) => tick.key) }];
  });
  return { kind: 'drawings', drawings, pieces, onPaper };
}

function sheetChapter(facts: BookFacts, group: PlanGroup, sheet: PlanSheet): Section {
  const { words, numberOf, plan, groupWords, units } = facts;
  const says = words.plans;
  const stock = group.stock.find((one) => one.id === sheet.stock);
  if (stock === undefined) throw new Error(`sheet ${sheet.number} of ${group.id} has no stock`);
  const ticks = ticksOf(facts, group, sheet);
  const stack = stackSizes(group, sheet);
  const heading = says.plan(sheet.number, group.sheets.length, groupWords(group));
  const size = sizeText(stock.length, stock.width, units);
  const stepList = stepsInWords(group, sheet, numberOf, words, units);
  const { restFrom, span } = namesOfJoined(sheet);
  const steps: TextBlock[] = [
    { kind: 'paragraph', text: says.alike(sheet.copies), strong: true },
    {
      kind: 'paragraph',
      text: [
        says.facts(stock.id, size, printSetting(mmToUm(group.saw.kerf), units), guideOf(group)),
        ...(restFrom === null ? [] : [says.rest(restFrom)]),
        ...(span === null ? [] : [says.span(...span)]),
      ].join(' '),
    },
    ...stackBlocks(facts, group, sheet),
    { kind: 'heading', text: stack === null ? says.steps : says.stackSteps(stack) },
    { kind: 'steps', steps: stepList },
  ];
  const pieces: TextBlock[] = [
    { kind: 'heading', text: says.pieces },
    { kind: 'ticks', items: ticks },
  ];
  return {
    id: `plan-${plan.groups.indexOf(group) + 1}-${sheet.number}`,
    heading,
    level: 3,
    startsPage: true,
    blocks: [{ ...drawingsOf(facts, group, sheet, ticks), label: heading, beside: [steps, pieces] }],
  };
}

function edgingIds(panel: PlanGroup['panels'][number]): string[] {
  const edges = [...panel.edging.alongLength, ...panel.edging.alongWidth];
  return edges.filter((edging) => edging !== null);
}

/** A chapter for each cut plan: its drawing, its steps in words, and what to tick off. */
export function cutPlanChapters(facts: BookFacts): Section[] {
  const sheets = facts.plan.groups.flatMap((group) =>
    group.sheets.map((sheet) => sheetChapter(facts, group, sheet)),
  );
  const heading = facts.words.plans.heading;
  return [{ id: 'plans', heading, level: 2, startsPage: false, blocks: [] }, ...sheets];
}
