import { dirname, resolve } from 'node:path';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import { WrongPlan } from '../../src/pipeline/provenPlan.ts';
import {
  type OrderMix,
  readMix,
  simulateYear,
  summariseRuns,
  type YearRun,
  yearCsv,
} from '../../src/pipeline/simulateYear.ts';
import type { YearOptions } from '../commands/year.ts';
import { type LibraryShelf, readOrderFile, withoutRepeats } from '../cutting/prepareJobs.ts';
import { exitCodes } from '../exitCodes.ts';
import { shortPath } from '../files/libraryFolder.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { diskReader } from '../files/reader.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { counterLine } from '../terminal/progress.ts';
import { reportFindings } from '../terminal/report.ts';
import { loadSolver } from '../threads/loadSolver.ts';
import { describeYear } from './describeYear.ts';

/** Runs `plywright year`: reads the mix and its orders, simulates, tells; sets the exit code. */
export async function year(file: string, options: YearOptions): Promise<void> {
  const existing = options.replace ? 'replace edited' : 'keep edited';
  const inTheWay = options.csv === undefined ? [] : await diskWriter.look(options.csv, existing);
  if (inTheWay.length > 0) return reportFindings(inTheWay, options);
  const text = await diskReader.text(file, 'order');
  if (!text.ok) return reportFindings(text.findings, options);
  const mix = readMix(text.value, file);
  if (!mix.ok) return reportFindings(mix.findings, options);
  const orders = await readEntries(mix.value, file, options);
  if (!orders.ok) return reportFindings(orders.findings, options);
  const { library } = orders.value[0]!;
  const line = counterLine(process.stderr, 'weeks cut');
  const runs: YearRun[] = [];
  let weeks = 0;
  try {
    const solver = await loadSolver();
    const progress = () => line.update(weeks++);
    const request = {
      mix: mix.value,
      orders: orders.value,
      library,
      file,
      workLimit: options.work,
      progress,
    };
    for (let run = 0; run < options.runs; run++) {
      const simulated = simulateYear(request, options.seed + run, solver);
      line.clear();
      if (!simulated.ok) return await reportFindings(simulated.findings, options);
      runs.push(simulated.value);
    }
  } catch (fault) {
    line.clear();
    if (!(fault instanceof WrongPlan)) throw fault;
    return reportFindings(fault.findings, options, exitCodes.failedReplay);
  }
  const { currency } = library;
  if (options.csv !== undefined) {
    const failed = await diskWriter.papers(options.csv, yearCsv(runs, currency), existing);
    if (failed.length > 0) return reportFindings(failed, options);
  }
  endWith(exitCodes.done);
  if (options.json) return print(jsonText(asData(file, runs, currency, orders.findings), withAreas));
  await print(describeYear(mix.value, runs, currency, coloursFor(process.stdout)));
  if (options.csv !== undefined) await print(`\n${options.csv}/: year-sheets.csv, year-weeks.csv\n`);
  const warnings = orders.findings.filter(({ severity }) => severity === 'warning');
  if (warnings.length > 0) await printError(describeFindings(warnings, coloursFor(process.stderr)));
}

function asData(file: string, runs: readonly YearRun[], currency: string, findings: readonly Finding[]) {
  return {
    ok: true,
    exitCode: exitCodes.done,
    mix: file,
    currency,
    summary: summariseRuns(runs),
    runs,
    findings,
  };
}

/** Areas are told in m², where the simulation counts µm². */
function withAreas(_key: string, value: unknown): unknown {
  if (typeof value === 'bigint') return Number(value) / 1e12;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => [key.replace(/AreaUm2$/, 'AreaM2'), each]),
  );
}

/** The order of each entry, worked out; all findings of all files at once. */
async function readEntries(
  mix: OrderMix,
  file: string,
  options: YearOptions,
): Promise<Checked<readonly OrderedFurniture[]>> {
  const shelf: LibraryShelf = new Map();
  const orders: OrderedFurniture[] = [];
  const findings: Finding[] = [];
  for (const { order, set } of mix.entries) {
    const path = shortPath(resolve(dirname(file), order));
    const { library } = options;
    const read = await readOrderFile(path, { ...(library === undefined ? {} : { library }), set }, shelf);
    findings.push(...read.findings);
    if (!read.ok) continue;
    const furnished = furnishOrder(read.value.text, path, read.value.library, read.value.whatIf);
    findings.push(...furnished.findings);
    if (furnished.ok) orders.push(furnished.value);
  }
  const other = orders.find(({ library }) => library !== orders[0]!.library);
  if (other !== undefined) {
    findings.push({
      code: 'libraries-differ',
      severity: 'error',
      message: 'All orders of a mix must be made from one library, since they are cut together.',
      place: { file },
      found: `${orders[0]!.library.id} and ${other.library.id}`,
    });
  }
  const found = withoutRepeats(findings);
  const isWrong = found.some(({ severity }) => severity === 'error');
  return isWrong ? { ok: false, findings: found } : { ok: true, value: orders, findings: found };
}
