import type { Papers } from '../../src/edge/index.ts';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { Nest } from '../../src/model/nest.ts';
import type {
  DrawingTools,
  DrawnAhead,
  GroupSummary,
  PaperWishes,
  ProvenPlan,
} from '../../src/pipeline/makePapers.ts';
import type { CutOptions } from '../commands/cut.ts';
import { type RunOptions, usualLabelFormat } from '../commands/runOptions.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { sayMeanwhile } from '../terminal/progress.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';
import type { NestedGroup, NestThreads } from '../threads/nestPool.ts';
import { describeJob, describePapers } from './describeJob.ts';
import { DrawingAhead } from './drawAhead.ts';
import { type Interrupts, listenForInterrupts } from './interrupts.ts';
import { nestFailures, nestJobs } from './nestJobs.ts';
import { groupsWithoutOffcuts, type OffcutSaving, savingInWords, savingOf } from './offcutsOnHand.ts';
import { type PreparedJob, prepareJobs } from './prepareJobs.ts';

/** A job whose plan passed its replay, with its papers and what is to be told of it. */
interface CutJob {
  readonly prepared: PreparedJob;
  readonly proven: ProvenPlan;
  readonly papers: Papers;
  readonly groups: readonly TimedSummary[];
}

/** A stock group's summary with its job and the time its search took by the clock. */
type TimedSummary = GroupSummary & { readonly job: string; readonly seconds: number };

/** How jobs are cut; `compared` searches again without the offcuts of a store, to say what they save. */
export type CutRun = RunOptions & {
  readonly compared?: boolean;
  readonly started?: NestThreads;
  readonly sheetsOnHand?: true;
};

/** Where only the store's sheets may be cut, the store is where more of them come from. */
function advisedFor(findings: readonly Finding[], { sheetsOnHand }: CutRun): readonly Finding[] {
  if (!sheetsOnHand) return findings;
  const advice = 'receive more sheets into the store, or leave --sheets-on-hand out';
  return findings.map((finding) =>
    ['no-sheets', 'sheets-run-out'].includes(finding.code) ? { ...finding, advice } : finding,
  );
}

/** Runs `plywright cut`: reads, nests, replays, and only then writes; sets the exit code. */
export async function cut(
  orders: readonly string[],
  options: CutOptions,
  started: NestThreads,
): Promise<void> {
  const compared = options.store !== undefined;
  return cutPrepared(await prepareJobs(orders, options), { ...options, compared, started });
}

/** Nests jobs, replays their plans, and only then writes their papers; sets the exit code. */
export async function cutPrepared(prepared: Checked<readonly PreparedJob[]>, options: CutRun): Promise<void> {
  if (!prepared.ok) return reportFindings(advisedFor(prepared.findings, options), options);
  const existing = options.replace ? 'replace edited' : 'keep edited';
  // Better to hear now than after the search that the papers cannot be written.
  const inTheWay = await Promise.all(prepared.value.map(({ folder }) => diskWriter.look(folder, existing)));
  if (inTheWay.flat().length > 0) return reportFindings(inTheWay.flat(), options);

  let stopSearch: () => void = () => undefined;
  const interrupts = listenForInterrupts(() => stopSearch());
  try {
    const stoppable = (stop: () => void) => {
      stopSearch = stop;
    };
    let ahead: DrawingAhead | null = null;
    const nesting = nestJobs(prepared.value, options, stoppable, (...done) => ahead?.groupDone(...done));
    // What is needed to draw is loaded while groups are searched.
    const loadingTools = loadTools();
    ahead = new DrawingAhead(prepared.value, options.seed, paperWishes(options), loadingTools);
    const nested = await nesting;
    const drawn = ahead.end();
    const failures = advisedFor(nestFailures(prepared.value, nested), options);
    if (failures.length > 0) return await reportFindings(failures, options);
    const saving = await savingByOffcuts(prepared.value, nested, options, stoppable);
    const said = sayMeanwhile(process.stderr, 'replaying the plans and drawing them');
    const made = await makeAll(prepared.value, nested, options, loadingTools, drawn);
    said();
    if (!made.ok) return await reportFailedReplay(made.findings, options);
    await writeAll({ jobs: made.jobs, saving }, prepared.findings, options, interrupts);
  } finally {
    interrupts.end();
  }
}

/** What the offcuts of the store save; null without a store. The search is done again for what is cut from offcuts. */
async function savingByOffcuts(
  jobs: readonly PreparedJob[],
  nested: readonly (readonly NestedGroup[])[],
  options: CutRun,
  stoppable: (stop: () => void) => void,
): Promise<OffcutSaving | null> {
  const [prepared] = jobs;
  if (!options.compared || prepared === undefined) return null;
  const { groups } = prepared.job;
  const bare = groupsWithoutOffcuts(groups, nested[0]!).map(({ group }) => group);
  const again = { ...prepared, job: { ...prepared.job, groups: bare } };
  const without = bare.length === 0 ? [[]] : await nestJobs([again], options, stoppable);
  return savingOf(groups, nested[0]!, without[0]!);
}

/** Jobs that are cut, and what the offcuts of a store have saved, if one was named. */
interface CutResult {
  readonly jobs: readonly CutJob[];
  readonly saving: OffcutSaving | null;
}

function paperWishes({ language, lengths }: CutRun): PaperWishes {
  return { language, lengths };
}

function loadTools(): Promise<DrawingTools> {
  const loading = import('./drawingTools.ts').then(({ loadDrawingTools }) => loadDrawingTools());
  // A failure is reported where the tools are used; when they are not, it does not matter.
  loading.catch(() => undefined);
  return loading;
}

type Made =
  | { readonly ok: true; readonly jobs: readonly CutJob[] }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Plans of all jobs, each replayed from its text; only when all of them are right are the papers made. */
async function makeAll(
  jobs: readonly PreparedJob[],
  nested: readonly (readonly NestedGroup[])[],
  options: CutRun,
  loadingTools: Promise<DrawingTools>,
  drawn: readonly DrawnAhead[],
): Promise<Made> {
  const { makePapers, provePlan } = await import('../../src/pipeline/makePapers.ts');
  const proofs = jobs.map(({ job }, j) => {
    const nests = nested[j]!.map(({ outcome }) => (outcome as { ok: true; nest: Nest }).nest);
    return provePlan(job, nests, options.seed);
  });
  const wrong = proofs.flatMap((proof) => (proof.ok ? [] : proof.findings));
  if (wrong.length > 0) return { ok: false, findings: wrong };
  const tools = await loadingTools;
  const { morePapers } = await import('../papers/morePapers.ts');
  const cutJobs = await Promise.all(
    jobs.map(async (prepared, j) => {
      const proven = proofs[j] as ProvenPlan;
      const groups = proven.groups.map((group, g) => ({
        job: prepared.job.name,
        ...group,
        seconds: Math.round(nested[j]![g]!.seconds * 1000) / 1000,
      }));
      const wishes = paperWishes(options);
      const usual = makePapers(prepared.job, proven, tools, wishes, drawn[j]);
      const { job } = prepared;
      const { page, labelFormat: format = usualLabelFormat, firstLabel: first = 1 } = options;
      const labels = { format, first };
      const asked = await morePapers(options.papers, { job, proven, tools, wishes, page, labels });
      return { prepared, proven, papers: new Map([...usual, ...asked]), groups };
    }),
  );
  return { ok: true, jobs: cutJobs };
}

async function reportFailedReplay(findings: readonly Finding[], options: CutRun): Promise<void> {
  await printError(
    'A plan did not pass its replay, so nothing was written. This is a fault of plywright:\n' +
      'please report it with the order or list that led to it.\n\n',
  );
  await reportFindings(findings, options, exitCodes.failedReplay);
}

async function writeAll(
  result: CutResult,
  warnings: readonly Finding[],
  options: CutRun,
  interrupts: Interrupts,
): Promise<void> {
  interrupts.putOff();
  const folders = result.jobs.map(({ prepared, papers }) => ({ folder: prepared.folder, papers }));
  const failed = await diskWriter.allPapers(folders, options.replace ? 'replace edited' : 'keep edited');
  if (failed.length > 0) return reportFindings(failed, options);
  if (options.json) await print(jsonDocument(result, warnings, options, interrupts.pressed()));
  else await printSummary(result, warnings, interrupts.pressed());
  endWith(exitCodes.done);
}

function jsonDocument(
  { jobs, saving }: CutResult,
  findings: readonly Finding[],
  options: CutRun,
  endedEarly: boolean,
): string {
  const document = {
    ok: true,
    exitCode: exitCodes.done,
    seed: options.seed,
    endedEarly,
    jobs: jobs.map(({ prepared, proven, papers }) => ({
      name: prepared.job.name,
      title: prepared.job.title,
      folder: prepared.folder,
      papers: [...papers.keys()].sort(),
      ...prepared.data?.(proven.plan),
    })),
    groups: jobs.flatMap(({ groups }) => groups),
    ...(saving === null ? {} : { offcuts: saving }),
    findings,
  };
  return jsonText(document);
}

/** What is said of a job beside its sheets, a line or more a sentence. */
function toldOf({ told }: PreparedJob, { plan }: ProvenPlan): string[] {
  const lines = told?.(plan) ?? [];
  return lines.length === 0
    ? []
    : [lines.map((text) => `${wrap(printable(text), TERMINAL_WIDTH, '  ')}\n`).join('')];
}

async function printSummary(
  { jobs, saving }: CutResult,
  warnings: readonly Finding[],
  endedEarly: boolean,
): Promise<void> {
  const colours = coloursFor(process.stdout);
  const parts = jobs.map(({ prepared, proven, groups, papers }) =>
    [
      describeJob(prepared.job.title, groups, prepared.job.currency, colours),
      ...toldOf(prepared, proven),
      describePapers(prepared.folder, [...papers.keys()], colours),
    ].join('\n'),
  );
  if (saving !== null) {
    const words = savingInWords(saving, jobs[0]?.prepared.job.currency ?? '');
    parts.push(`${wrap(words, TERMINAL_WIDTH, '  ')}\n`);
  }
  if (endedEarly) parts.push('The search was ended early; the papers are those of the best plan so far.\n');
  if (warnings.length > 0) parts.push(describeFindings(warnings, colours));
  await print(`${parts.join('\n')}`);
}
