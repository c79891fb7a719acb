import { createHash } from 'node:crypto';
import { basename, dirname, resolve } from 'node:path';
import type { PlanFile } from '../../src/model/plan.ts';
import { orderOfPlan } from '../../src/pipeline/finishCut.ts';
import { readPlan, replay } from '../../src/pipeline/replayPlan.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskReader } from '../files/reader.ts';
import { printError } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable } from '../terminal/text.ts';

/** A plan file that passed its replay. */
export interface ProvenFile {
  readonly plan: PlanFile;
  /** SHA-256 of its text, which the ledger knows it by. */
  readonly hash: string;
  /** Name of its job, as the labels of its panels have it. */
  readonly job: string;
}

/**
 * Reads a plan and saws it in simulation. Null when it cannot be read or sawn: that has been told and the exit code is set;
 * `nothing` says what was not done, such as `nothing was booked`.
 */
export async function readProvenPlan(
  path: string,
  nothing: string,
  how: { readonly json?: true },
): Promise<ProvenFile | null> {
  const text = await diskReader.text(path, 'plan');
  const plan = text.ok ? readPlan(text.value, path) : text;
  if (!text.ok || !plan.ok) {
    await reportFindings(plan.findings, how);
    return null;
  }
  const replayed = replay(text.value, path);
  if (!replayed.ok) {
    await printError(`${printable(path)} cannot be sawn as it is written, so ${nothing}:\n\n`);
    await reportFindings(replayed.findings, how, exitCodes.failedReplay);
    return null;
  }
  // The papers of a job lie in a folder of its name.
  const job = plan.value.before?.job ?? (orderOfPlan(plan.value) || basename(dirname(resolve(path))));
  const hash = createHash('sha256').update(text.value).digest('hex');
  return { plan: plan.value, hash, job };
}
