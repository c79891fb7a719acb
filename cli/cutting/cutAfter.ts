import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { PlanFile, SawnCopies } from '../../src/model/plan.ts';
import type { Ledger } from '../../src/model/store.ts';
import {
  allSheets,
  offcutsFor,
  planIsBooked,
  sheetsBooked,
  sheetsMeant,
  sheetsOnHand,
} from '../../src/pipeline/keepStore.ts';
import { prepareAfter } from '../../src/pipeline/planAfter.ts';
import { furnishOrder, suppliesOf } from '../../src/pipeline/prepareOrder.ts';
import type { CutOptions } from '../commands/cut.ts';
import { safeFileName } from '../files/fileName.ts';
import { readStore } from '../store/ledgerFile.ts';
import { counted } from '../terminal/text.ts';
import { cutPrepared } from './cut.ts';
import { type PreparedJob, readOrderFile } from './prepareJobs.ts';
import { type ProvenFile, readProvenPlan } from './readProvenPlan.ts';

function refused(code: string, file: string, message: string, advice: string): Checked<never> {
  const finding: Finding = { code, severity: 'error', message, place: { file }, advice };
  return { ok: false, findings: [finding] };
}

/** Which sheets of the plan are sawn: as the ledger says, or as they were named. */
function sawnSheets(
  { plan, hash }: ProvenFile,
  path: string,
  ledger: Ledger | null,
  named: readonly string[] | undefined,
): Checked<readonly SawnCopies[]> {
  if (ledger === null) {
    const meant = sheetsMeant(plan, named ?? [], []);
    const placed = meant.findings.map((finding) => ({ ...finding, place: { file: path } }));
    return meant.ok ? meant : { ok: false, findings: placed };
  }
  const booked = sheetsBooked(ledger, hash);
  if (booked === 'all') return { ok: true, value: allSheets(plan), findings: [] };
  if (booked.length > 0 || plan.sawn !== undefined) return { ok: true, value: booked, findings: [] };
  return refused(
    'nothing-sawn',
    path,
    'The store has no sheet of this plan booked as sawn.',
    `book what is sawn first (plywright stock cut ${path} --sheets ...), or cut the order without --after`,
  );
}

/** A plan of which sheets are booked is what their labels stand for: it is not written over. */
async function bookedPlanInTheWay(folder: string, ledger: Ledger | null): Promise<Finding[]> {
  if (ledger === null) return [];
  const path = join(folder, 'plan.json');
  const text = await readFile(path).catch(() => null);
  if (text === null || !planIsBooked(ledger, createHash('sha256').update(text).digest('hex'))) return [];
  const wrong = refused(
    'plan-is-booked',
    path,
    'Sheets of the plan in this folder are booked as sawn already.',
    `go on from that plan: --after ${path}`,
  );
  return [...wrong.findings];
}

function panelsSawn({ sawn }: PlanFile): number {
  const panels = (sawn?.groups ?? []).flatMap((group) => group.panels);
  return panels.reduce((sum, { count }) => sum + count, 0);
}

function toldOf(plan: PlanFile): string[] {
  const left = (plan.sawn?.groups ?? []).flatMap((group) => group.left);
  const kept = left.filter((piece) => piece.kept).length;
  const sheets = (plan.sawn?.sheets ?? []).reduce((sum, { copies }) => sum + copies.length, 0);
  const used = `already sawn: ${counted(panelsSawn(plan), 'panel')} of the order (${counted(sheets, 'sheet')} of the plan before)`;
  const over =
    left.length === 0
      ? []
      : [
          `of no use any more: ${counted(left.length, 'sawn panel')}, of them ${kept} large enough for the rack`,
        ];
  return [used, ...over];
}

async function prepare(
  file: string,
  path: string,
  proven: ProvenFile,
  options: CutOptions,
): Promise<Checked<readonly PreparedJob[]>> {
  const read = await readOrderFile(file, options, new Map());
  if (!read.ok) return read;
  const ordered = furnishOrder(read.value.text, file, read.value.library, read.value.whatIf);
  if (!ordered.ok) return ordered;
  const stored = options.store === undefined ? null : await readStore(options.store);
  if (stored !== null && !stored.ok) return stored;
  const ledger = stored === null ? null : stored.value.ledger;
  const sawn = sawnSheets(proven, path, ledger, options.sawn);
  if (!sawn.ok) return sawn;
  const { plan, hash, job } = proven;
  const offered = suppliesOf(read.value.library);
  const sheets = ledger !== null && options.sheetsOnHand ? sheetsOnHand(ledger, job, offered) : offered;
  const after = prepareAfter({
    ordered: ordered.value,
    plan,
    planHash: hash,
    job,
    sawn: sawn.value,
    supplies: [...sheets, ...(ledger === null ? [] : offcutsFor(ledger, job))],
    isBooked: ledger !== null,
    rows: options.wholeRows ? 'whole' : 'as sawn',
    language: options.language,
    file,
  });
  const findings = [...read.findings, ...ordered.findings, ...(stored?.findings ?? []), ...after.findings];
  if (!after.ok) return { ok: false, findings };
  const folder = join(options.out, safeFileName(after.value.name));
  const inTheWay = await bookedPlanInTheWay(folder, ledger);
  if (inTheWay.length > 0) return { ok: false, findings: inTheWay };
  const prepared: PreparedJob = {
    job: after.value,
    file,
    folder,
    told: toldOf,
    data: (made) => ({ before: made.before, sawn: made.sawn }),
  };
  return { ok: true, value: [prepared], findings };
}

/** Runs `plywright cut ORDER --after PLAN`: what is sawn of the plan stays, and the rest of the order is cut anew. */
export async function cutAfter(file: string, path: string, options: CutOptions): Promise<void> {
  const proven = await readProvenPlan(path, 'nothing goes on from it', options);
  if (proven === null) return;
  const compared = options.store !== undefined;
  await cutPrepared(await prepare(file, path, proven, options), { ...options, compared });
}
