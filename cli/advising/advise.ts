import { adviseOrder } from '../../src/pipeline/adviseOrder.ts';
import { WrongPlan } from '../../src/pipeline/provenPlan.ts';
import type { AdviseOptions } from '../commands/advise.ts';
import { readOrderFile } from '../cutting/prepareJobs.ts';
import { exitCodes } from '../exitCodes.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { counterLine } from '../terminal/progress.ts';
import { reportFindings } from '../terminal/report.ts';
import { loadSolver } from '../threads/loadSolver.ts';
import { USUAL_WORK } from '../threads/searchGroups.ts';
import { describeAdvice } from './describeAdvice.ts';

/** Runs `plywright advise`: reads the order, looks for changes and tells them; sets the exit code. Nothing is written. */
export async function advise(file: string, options: AdviseOptions): Promise<void> {
  const { library: named, set, may, seed, work, nestings } = options;
  const asked = { ...(named === undefined ? {} : { library: named }), ...(set === undefined ? {} : { set }) };
  const read = await readOrderFile(file, asked, new Map());
  if (!read.ok) return reportFindings(read.findings, options);
  const line = counterLine(process.stderr, 'plans tried');
  try {
    const search = { seed, workLimit: work ?? USUAL_WORK, progress: line.update };
    const request = { ...read.value, file, may, mostNestings: nestings, search };
    const advised = adviseOrder(request, await loadSolver());
    line.clear();
    const findings = [...read.findings, ...advised.findings];
    if (!advised.ok) return await reportFindings(findings, options);
    const { currency } = read.value.library;
    if (options.json) {
      const document = {
        ok: true,
        exitCode: exitCodes.done,
        order: file,
        currency,
        ...advised.value,
        findings,
      };
      await print(jsonText(document));
    } else {
      await print(describeAdvice(file, advised.value, currency, coloursFor(process.stdout)));
      if (findings.length > 0) await printError(describeFindings(findings, coloursFor(process.stderr)));
    }
    endWith(exitCodes.done);
  } catch (fault) {
    line.clear();
    if (!(fault instanceof WrongPlan)) throw fault;
    await reportFindings(fault.findings, options, exitCodes.failedReplay);
  }
}
