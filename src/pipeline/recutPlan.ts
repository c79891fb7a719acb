import { errorFinding, listWords, warningFinding } from '../basics/findings.ts';
import { findPieces, type PieceWord } from '../changes/findPieces.ts';
import { panelDifferences } from '../changes/matchPanels.ts';
import { partOfPlan, partsOfGroup } from '../changes/partsOfPlan.ts';
import { freshSheets, offcutsOfGroup, sawOfPlan } from '../changes/stockOfPlan.ts';
import { checkSizes } from '../demands/checkSizes.ts';
import { makeDemands } from '../demands/makeDemands.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Part } from '../model/part.ts';
import type { PlanFile, PlanGroup, PlanLabel, PlanStock } from '../model/plan.ts';
import type { SheetSupply, StockGroup } from '../model/stock.ts';
import { type Job, type OrderedFurniture, placedIn } from './job.ts';
import { type PlanPiece, piecesOfPlan } from './piecesOfPlan.ts';

export type { PieceWord } from '../changes/findPieces.ts';
export { offcutsCutUp, offcutsOfPlan, type PlanPiece } from './piecesOfPlan.ts';

/** What is to be cut anew, and from what. */
export interface RecutRequest {
  readonly plan: PlanFile;
  /** SHA-256 of its text. */
  readonly planHash: string;
  /** Name of the job, where the plan does not say itself what its labels have. */
  readonly job: string;
  /** File of the plan, to show. */
  readonly file: string;
  /** The spoiled panels as people named them. */
  readonly words: readonly PieceWord[];
  readonly why: string;
  /** Which recut of the job this is, from 1. */
  readonly number: number;
  /** `whole`: rows of matched fronts are cut anew as one blank where one of them is spoiled. */
  readonly rows: 'whole' | 'as spoiled';
  /** Offcuts that may be cut up, of any board. */
  readonly offcuts: readonly SheetSupply[];
  /** How many sheets there are of a size; absent: as many as can be bought. */
  readonly onHand?: (group: PlanGroup, stock: PlanStock) => number;
  /** What the order says of the panels beyond the plan. */
  readonly ordered?: OrderedFurniture;
  /** A tag such as `en`, for the title. */
  readonly language: string;
}

/** A recut, ready to be nested. */
export interface PreparedRecut {
  readonly job: Job;
  /** What is cut anew. */
  readonly pieces: readonly PlanPiece[];
}

/** A blank of matched fronts of which some are spoiled. */
interface BrokenBlank {
  readonly spoiled: readonly PlanPiece[];
  readonly others: readonly PlanPiece[];
}

function brokenBlanks(
  plan: PlanFile,
  all: readonly PlanPiece[],
  spoiled: ReadonlySet<PlanPiece>,
): BrokenBlank[] {
  return plan.groups.flatMap((group) =>
    group.runs.flatMap((run) => {
      // The first pieces of all fronts of a row come from one blank, and so on.
      const blanks = new Map<number, PlanPiece[]>();
      for (const piece of all) {
        if (!run.panels.includes(piece.id)) continue;
        blanks.set(piece.piece, [...(blanks.get(piece.piece) ?? []), piece]);
      }
      return [...blanks.values()].flatMap((blank) => {
        const some = blank.filter((piece) => spoiled.has(piece));
        const others = blank.filter((piece) => !spoiled.has(piece));
        return some.length === 0 || others.length === 0 ? [] : [{ spoiled: some, others }];
      });
    }),
  );
}

function panelWords({ number, name, unit }: PlanPiece): string {
  return `${number} ${unit === '' ? name : `${name}, ${unit}`}`;
}

function tellBroken({ spoiled, others }: BrokenBlank, file: string): Finding {
  const message = `The grain runs on through a row of fronts in which ${listWords(spoiled.map(panelWords), 'and')} ${spoiled.length === 1 ? 'is' : 'are'} spoiled: cut anew, ${spoiled.length === 1 ? 'its' : 'their'} grain does not meet that of the others.`;
  return warningFinding(
    'matched-row-broken',
    message,
    { file },
    {
      found: listWords(others.map(panelWords), 'and'),
      advice: 'to cut the whole row anew from one blank, add --whole-rows',
    },
  );
}

/** The group with the spoiled panels alone, and what they may be cut from. */
function groupOf(
  group: PlanGroup,
  parts: readonly Part[],
  { offcuts, onHand, file }: RecutRequest,
): Checked<StockGroup> {
  const saw = sawOfPlan(group);
  const fresh = freshSheets(group, onHand && ((stock) => onHand(group, stock)));
  const sheets = [...offcutsOfGroup(group, offcuts), ...fresh];
  const findings = placedIn(file, sheets.length === 0 ? [noSheets(group)] : checkSizes(parts, sheets, saw));
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  const demands = makeDemands(parts, sheets, saw.kerfUm);
  return {
    ok: true,
    value: {
      id: group.id,
      board: group.board,
      finish: group.finish,
      thicknessUm: parts[0]!.thicknessUm,
      parts,
      demands: demands.demands,
      sheets,
      saw,
      pricedBy: group.pricedBy,
    },
    findings: [...findings, ...placedIn(file, demands.findings)],
  };
}

function noSheets({ board, finish }: PlanGroup): Finding {
  const what = `${board} ${finish}`.trim() || 'this board';
  return errorFinding('no-sheets', `There is neither an offcut nor a sheet of ${what} left.`, undefined, {
    advice: 'receive a sheet into the store, or leave --sheets-on-hand out',
  });
}

function noPlanOf(piece: PlanPiece): Finding {
  return errorFinding(
    'panel-of-earlier-plan',
    `Panel ${panelWords(piece)} was sawn by an earlier plan, and this one has no sheets of its board.`,
    undefined,
    { found: piece.code, advice: 'name the plan that it was sawn by' },
  );
}

/** Panels that the order file has otherwise than the plan: its papers would speak of other panels. */
function otherThanOrdered({ furniture }: OrderedFurniture, groups: readonly StockGroup[]): Finding[] {
  const ordered = new Map(furniture.units.flatMap(({ panels }) => panels.map((panel) => [panel.id, panel])));
  return groups.flatMap(({ parts }) =>
    parts.flatMap((part) => {
      const panel = ordered.get(part.id);
      if (panel !== undefined && panelDifferences(part, panel).every((one) => one === 'row')) return [];
      const what = part.unit === '' ? part.name : `${part.name}, ${part.unit}`;
      return [
        errorFinding('order-differs', `The order file has another panel ${what} than the plan.`, undefined, {
          found: panel === undefined ? 'no such panel' : panelDifferences(part, panel).join(', '),
          advice: 'name the order as it was when the plan was made, or leave --order-file out',
        }),
      ];
    }),
  );
}

/** The parts to be cut anew in a group, as often as they are spoiled. */
function partsOf(plan: PlanFile, group: PlanGroup, pieces: readonly PlanPiece[]): Part[] {
  const own = partsOfGroup(group);
  const known = new Set(own.map(({ id }) => id));
  const sawnGroup = plan.sawn?.groups.find(({ id }) => id === group.id);
  const earlier = (sawnGroup?.panels ?? []).filter(({ id }) => !known.has(id));
  return [...own, ...earlier.map((panel) => partOfPlan(panel, group))].flatMap((part) => {
    const count = pieces.filter(({ id }) => id === part.id).length;
    return count === 0 ? [] : [{ ...part, count }];
  });
}

function labelsOf(plan: PlanFile, pieces: readonly PlanPiece[]): Map<string, PlanLabel> {
  const listed = [
    ...plan.groups.flatMap(({ panels }) => panels),
    ...(plan.sawn?.groups ?? []).flatMap(({ panels }) => panels),
  ];
  const labels = new Map<string, PlanLabel>();
  for (const { id, number } of pieces) {
    const own = pieces.filter((piece) => piece.id === id).map(({ piece }) => piece);
    const of = Math.max(
      ...listed.filter((panel) => panel.id === id).map(({ label, count }) => label?.of ?? count),
    );
    labels.set(id, { number, pieces: own.sort((a, b) => a - b), of });
  }
  return labels;
}

/**
 * Spoiled panels of a plan → a job of its own that cuts them anew, from offcuts at no price and from fresh sheets of the
 * plan. Each panel keeps its number and the text of its label; the offcuts of the recut are called after the recut. A row of
 * matched fronts of which only some are spoiled is told, or cut anew as a whole. Panels that are not found, and boards of
 * which nothing is left, are errors.
 */
export function prepareRecut(request: RecutRequest): Checked<PreparedRecut> {
  const { plan, file } = request;
  const job = plan.before?.job ?? request.job;
  const all = piecesOfPlan(plan, job);
  const named = findPieces(all, request.words);
  if (!named.ok) return { ok: false, findings: placedIn(file, named.findings) };
  const chosen = new Set(named.value);
  const broken = brokenBlanks(plan, all, chosen);
  const findings: Finding[] = [];
  if (request.rows === 'whole') {
    for (const { others } of broken) for (const piece of others) chosen.add(piece);
  } else findings.push(...broken.map((blank) => tellBroken(blank, file)));
  const pieces = all
    .filter((piece) => chosen.has(piece))
    .sort((a, b) => a.number - b.number || a.piece - b.piece);
  const groups: StockGroup[] = [];
  for (const group of plan.groups) {
    const parts = partsOf(plan, group, pieces);
    if (parts.length === 0) continue;
    const made = groupOf(group, parts, request);
    findings.push(...made.findings);
    if (made.ok) groups.push(made.value);
  }
  if (request.ordered !== undefined) {
    findings.push(...placedIn(file, otherThanOrdered(request.ordered, groups)));
  }
  const homeless = pieces.filter(({ group }) => !plan.groups.some(({ id }) => id === group));
  findings.push(...placedIn(file, homeless.map(noPlanOf)));
  if (findings.some(({ severity }) => severity === 'error')) return { ok: false, findings };
  return { ok: true, value: { job: jobOf(request, job, pieces, groups), pieces }, findings };
}

/** The plans that a plan goes on from, for one that goes on from it. */
export function earlierPlans({ before }: PlanFile): { earlier?: string[] } {
  return before === undefined ? {} : { earlier: [...(before.earlier ?? []), before.plan] };
}

function jobOf(
  request: RecutRequest,
  job: string,
  pieces: readonly PlanPiece[],
  groups: readonly StockGroup[],
): Job {
  const { plan, planHash, number, why, ordered, language } = request;
  const title = plan.before?.title ?? plan.job;
  const name = `${job}-recut-${number}`;
  return {
    name,
    title: wordsOf(language).later.recutTitle(title, number),
    currency: plan.currency,
    groups,
    ...(ordered === undefined ? {} : { ordered }),
    later: {
      before: { plan: planHash, ...earlierPlans(plan), job, title, name },
      recut: { number, why, spoiled: pieces.map(({ code }) => code) },
      labels: labelsOf(plan, pieces),
    },
  };
}
