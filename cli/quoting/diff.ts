import { createHash } from 'node:crypto';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { PlanFile, SawnCopies } from '../../src/model/plan.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import type { Ledger } from '../../src/model/store.ts';
import {
  changeLists,
  compareOrders,
  comparePanels,
  type OrderChanges,
  offcutsOfSawn,
  restOfOrder,
  sawnOfPlan,
  toldAmount,
} from '../../src/pipeline/compareOrders.ts';
import { offcutsFor } from '../../src/pipeline/keepStore.ts';
import { planOfOrder } from '../../src/pipeline/planOfOrder.ts';
import type { DiffOptions } from '../commands/diff.ts';
import { listenForInterrupts } from '../cutting/interrupts.ts';
import { type PreparedJob, prepareJobs } from '../cutting/prepareJobs.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { diskReader } from '../files/reader.ts';
import { readStore } from '../store/ledgerFile.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import { describeChanges } from './describeChanges.ts';
import { orderedOf, searchPlans } from './plansOfOrders.ts';

/** The two orders with what is known of the old one. */
interface Asked {
  readonly before: PreparedJob;
  readonly after: PreparedJob;
  /** Null where it has to be searched for. */
  readonly plan: PlanFile | null;
  readonly sawn: readonly SawnCopies[];
  readonly ledger: Ledger | null;
  readonly findings: readonly Finding[];
}

async function prepared(
  file: string,
  { library }: DiffOptions,
  set: readonly string[],
): Promise<Checked<PreparedJob>> {
  const jobs = await prepareJobs([file], { out: 'out', set, ...(library === undefined ? {} : { library }) });
  return jobs.ok ? { ...jobs, value: jobs.value[0]! } : jobs;
}

function otherCurrency(before: PreparedJob, after: PreparedJob): Finding[] {
  if (before.job.currency === after.job.currency) return [];
  return [
    {
      code: 'other-currency',
      severity: 'error',
      message:
        'The libraries of the two orders have different currencies, so their prices cannot be compared.',
      place: { file: after.file, field: 'library' },
      found: after.job.currency,
      expected: before.job.currency,
    },
  ];
}

async function readAsked(old: string, wanted: string, options: DiffOptions): Promise<Checked<Asked>> {
  const [before, after] = [
    await prepared(old, options, []),
    await prepared(wanted, options, options.set ?? []),
  ];
  const ledger = options.store === undefined ? null : await readStore(options.store);
  const text = options.plan === undefined ? null : await diskReader.text(options.plan, 'plan');
  const all = [before, after, ledger, text].flatMap((read) => read?.findings ?? []);
  if (!before.ok || !after.ok || ledger?.ok === false || text?.ok === false)
    return { ok: false, findings: all };
  // What is to be minded in the old order is of no interest any more.
  const findings = all.filter((finding) => !before.findings.includes(finding));
  const wrong = otherCurrency(before.value, after.value);
  if (wrong.length > 0) return { ok: false, findings: [...findings, ...wrong] };
  const known = { before: before.value, after: after.value, ledger: ledger?.value.ledger ?? null };
  if (text === null) return { ok: true, value: { ...known, plan: null, sawn: [], findings }, findings };
  const plan = planOfOrder(before.value.job, text.value, options.plan!);
  if (!plan.ok) return { ok: false, findings: [...findings, ...plan.findings] };
  const hash = createHash('sha256').update(text.value).digest('hex');
  const booked = known.ledger === null ? null : { ledger: known.ledger, hash };
  const sawn = sawnOfPlan(plan.value, booked, options.sawn ?? []);
  if (!sawn.ok) return { ok: false, findings: [...findings, ...sawn.findings] };
  return { ok: true, value: { ...known, plan: plan.value, sawn: sawn.value, findings }, findings };
}

/** Offcuts that the new order may be cut from: those of the store; without one those of the sheets that are sawn. */
function offcutsOf({ before, after, plan, sawn, ledger }: Asked): readonly SheetSupply[] {
  if (ledger !== null) return offcutsFor(ledger, after.job.name);
  return plan === null ? [] : offcutsOfSawn(plan, before.job.name, sawn);
}

/** What is still to be searched for, searched for; what goes wrong is told here. */
async function changesOf(asked: Asked, options: DiffOptions): Promise<OrderChanges | null> {
  const { before, after, plan, sawn, ledger } = asked;
  const panels = comparePanels(
    orderedOf(before),
    orderedOf(after),
    plan === null ? null : { plan, sheets: sawn },
  );
  const rest = restOfOrder(panels, after.job, after.file, offcutsOf(asked));
  if (!rest.ok) {
    await reportFindings(rest.findings, options);
    return null;
  }
  const toNest = [...(plan === null ? [before] : []), { ...after, job: rest.value }];
  let stopSearch: () => void = () => undefined;
  const interrupts = listenForInterrupts(() => stopSearch());
  try {
    const searched = await searchPlans(toNest, options, (stop) => {
      stopSearch = stop;
    });
    if (!searched.ok) {
      if (searched.faulty) await reportFindings(searched.findings, options, exitCodes.failedReplay);
      else await reportFindings(searched.findings, options);
      return null;
    }
    const [restPlan, oldPlan = plan] = [...searched.plans].reverse();
    if (restPlan === undefined || oldPlan === null) throw new Error('a plan is missing');
    return compareOrders(panels, { before: oldPlan, sawn, rest: restPlan }, ledger);
  } finally {
    interrupts.end();
  }
}

function jsonDocument({ before, after, findings }: Asked, changes: OrderChanges): string {
  const { panels, material, prices, pricedBy, sawn } = changes;
  const sizes = (part: (typeof panels)[number]['before']) =>
    part && {
      board: part.board,
      finish: part.finish,
      length: part.finishedLengthUm / 1000,
      width: part.finishedWidthUm / 1000,
      cutLength: part.cutLengthUm / 1000,
      cutWidth: part.cutWidthUm / 1000,
    };
  const document = {
    ok: true,
    exitCode: exitCodes.done,
    before: before.job.name,
    after: after.job.name,
    currency: after.job.currency,
    sawn,
    panels: panels.map((panel) => ({
      change: panel.kind,
      unit: (panel.after ?? panel.before)!.unit,
      name: (panel.after ?? panel.before)!.name,
      count: panel.count,
      differs: panel.differs,
      before: sizes(panel.before),
      after: sizes(panel.after),
      sawn: panel.sawn,
      used: panel.used,
    })),
    material: material.map((row) => ({
      item: row.item,
      id: row.id,
      board: row.board,
      finish: row.finish,
      unit: row.item === 'edging' ? 'm' : 'piece',
      before: toldAmount(row, row.before),
      after: toldAmount(row, row.after),
      done: toldAmount(row, row.done),
      inStore: row.there === null ? null : toldAmount(row, row.there),
      onOrder: row.coming === null ? null : toldAmount(row, row.coming),
      toBuy: toldAmount(row, row.toBuy),
      toBuyMinor: row.toBuyMinor,
      priceBeforeMinor: row.priceBeforeMinor,
      priceAfterMinor: row.priceAfterMinor,
    })),
    pricedBy,
    prices: prices.map((row) => ({ ...row, differenceMinor: row.afterMinor - row.beforeMinor })),
    findings,
  };
  return jsonText(document);
}

/** Runs `plywright diff`: sets the exit code. */
export async function diff(old: string, wanted: string, options: DiffOptions): Promise<void> {
  const asked = await readAsked(old, wanted, options);
  if (!asked.ok) return reportFindings(asked.findings, options);
  const existing = options.replace ? 'replace edited' : 'keep edited';
  const inTheWay = options.csv === undefined ? [] : await diskWriter.look(options.csv, existing);
  if (inTheWay.length > 0) return reportFindings(inTheWay, options);
  const changes = await changesOf(asked.value, options);
  if (changes === null) return;
  const { before, after, findings } = asked.value;
  if (options.csv !== undefined) {
    const failed = await diskWriter.papers(options.csv, changeLists(changes, after.job.currency), existing);
    if (failed.length > 0) return reportFindings(failed, options);
  }
  endWith(exitCodes.done);
  if (options.json) return print(jsonDocument(asked.value, changes));
  const titles = [before.job.title, after.job.title] as const;
  await print(describeChanges(titles, changes, after.job.currency, coloursFor(process.stdout)));
  if (options.csv !== undefined) await print(`\n${options.csv}/: changed-panels.csv, changed-material.csv\n`);
  if (findings.length > 0) await printError(describeFindings(findings, coloursFor(process.stderr)));
}
