import { mmToUm, printMm } from '../../basics/lengths.ts';
import { drawCutPlan } from '../../drawing/index.ts';
import { namesInStack, plansInStack, stackSizes } from '../../drawing/stackWords.ts';
import type { PlanGroup, PlanPanel, PlanSheet } from '../../model/plan.ts';
import { stepsInWords } from '../stepsInWords.ts';
import type { Block, DrawnPiece, Section, Tick } from './book.ts';
import { type BookFacts, panelText, sizeText } from './subject.ts';

/** A box to tick for every panel from a sheet, as often as the sheet is cut. */
function ticksOf(facts: BookFacts, group: PlanGroup, sheet: PlanSheet): Tick[] {
  const { words, numberOf } = facts;
  const panels = new Map(group.panels.map((panel) => [panel.id, panel]));
  const copies = Array.from({ length: sheet.copies }, (_, index) => index + 1);
  return copies.flatMap((copy) =>
    sheet.pieces.flatMap((ending): Tick[] => {
      const panel = ending.is === 'panel' ? panels.get(ending.panel) : undefined;
      if (panel === undefined) return [];
      const number = numberOf(panel.id);
      const text = words.plans.tick(number, panelText(panel), sizeText(panel.length, panel.width));
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
function stackBlocks({ words, numberOf }: BookFacts, group: PlanGroup, sheet: PlanSheet): Block[] {
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

function sheetChapter(facts: BookFacts, group: PlanGroup, sheet: PlanSheet): Section {
  const { words, numberOf, plan, groupWords } = facts;
  const says = words.plans;
  const stock = group.stock.find((one) => one.id === sheet.stock);
  if (stock === undefined) throw new Error(`sheet ${sheet.number} of ${group.id} has no stock`);
  const titles = new Map(
    [group.board, group.finish, ...group.panels.flatMap(edgingIds)].map((id) => [id, facts.title(id)]),
  );
  const drawings = drawCutPlan(group, sheet, {
    measure: facts.measure,
    words: words.drawings,
    job: plan.job,
    titles,
  });
  const ticks = ticksOf(facts, group, sheet);
  const stack = stackSizes(group, sheet);
  const pieces = (drawings[0]?.pieces ?? []).flatMap(({ piece, box }): DrawnPiece[] => {
    const own = ticks.filter((tick) => tick.piece === piece);
    const panel = own[0]?.panel;
    return panel === undefined ? [] : [{ panel, box, ticks: own.map((tick) => tick.key) }];
  });
  const heading = says.plan(sheet.number, group.sheets.length, groupWords(group));
  return {
    id: `plan-${plan.groups.indexOf(group) + 1}-${sheet.number}`,
    heading,
    level: 3,
    startsPage: true,
    blocks: [
      { kind: 'drawings', label: heading, drawings, pieces },
      { kind: 'paragraph', text: says.alike(sheet.copies), strong: true },
      {
        kind: 'paragraph',
        text: says.facts(stock.id, sizeText(stock.length, stock.width), printMm(mmToUm(group.saw.kerf))),
      },
      ...stackBlocks(facts, group, sheet),
      { kind: 'heading', text: stack === null ? says.steps : says.stackSteps(stack) },
      { kind: 'steps', steps: stepsInWords(group, sheet, numberOf, words) },
      { kind: 'heading', text: says.pieces },
      { kind: 'ticks', items: ticks },
    ],
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
