import { createHash } from 'node:crypto';
import type { Finding } from '../../src/model/finding.ts';
import {
  type Comparison,
  compare,
  comparedLists,
  type Design,
  designOf,
} from '../../src/pipeline/compareDesigns.ts';
import type { CompareOptions } from '../commands/compare.ts';
import { listenForInterrupts } from '../cutting/interrupts.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { systemReason } from '../files/systemReason.ts';
import { orderedOf, searchPlans } from '../quoting/plansOfOrders.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import { isSearchedByItself, USUAL_WORK } from '../threads/searchGroups.ts';
import { describeComparison } from './describeComparison.ts';
import { type ReadyDesign, type ReadyDesigns, readDesigns } from './readDesigns.ts';
import { designKeys, resultCache, underName } from './resultCache.ts';

/** Runs `plywright compare`: sets the exit code. */
export async function compareDesigns(files: readonly string[], options: CompareOptions): Promise<void> {
  const ready = await readDesigns(files, options);
  if (!ready.ok) return reportFindings(ready.findings, options);
  const currencies = otherCurrencies(ready.value);
  const existing = options.replace ? 'replace edited' : 'keep edited';
  const inTheWay = options.out === undefined ? [] : await diskWriter.look(options.out, existing);
  if (currencies.length + inTheWay.length > 0) return reportFindings([...currencies, ...inTheWay], options);
  const comparison = await workOut(ready.value, options);
  if (comparison === null) return;
  if (options.out !== undefined) {
    const failed = await diskWriter.papers(
      options.out,
      await papersOf(comparison.comparison, ready.value, options),
      existing,
    );
    if (failed.length > 0) return reportFindings(failed, options);
  }
  await tell(comparison.comparison, [...ready.findings, ...comparison.findings], options);
  endWith(exitCodes.done);
}

function otherCurrencies({ designs }: ReadyDesigns): Finding[] {
  const [first] = designs;
  const other = designs.find(({ prepared }) => prepared.job.currency !== first?.prepared.job.currency);
  if (first === undefined || other === undefined) return [];
  return [
    {
      code: 'other-currency',
      severity: 'error',
      message: 'The libraries of these orders have different currencies, so their prices cannot be compared.',
      place: { file: other.prepared.file, field: 'library' },
      found: other.prepared.job.currency,
      expected: first.prepared.job.currency,
    },
  ];
}

interface WorkedOutDesigns {
  readonly comparison: Comparison;
  readonly findings: readonly Finding[];
}

/** The designs as `plywright cut` would find them, from the cache where it has them; what goes wrong is told here. */
async function workOut({ designs }: ReadyDesigns, options: CompareOptions): Promise<WorkedOutDesigns | null> {
  const cache = resultCache(options.cache);
  const keys = await keysOf(designs, options);
  const known = await Promise.all(
    designs.map(async ({ name }, index): Promise<Design | null> => {
      const kept = keys === null ? null : await cache.read(keys[index]!);
      const result = kept && underName(kept, name);
      return result?.ok ? result.design : null;
    }),
  );
  const missing = designs.flatMap((_, index) => (known[index] === null ? [index] : []));
  let stopSearch: () => void = () => undefined;
  const interrupts = listenForInterrupts(() => stopSearch());
  try {
    const jobs = missing.map((index) => designs[index]!.prepared);
    const searched = await searchPlans(jobs, options, (stop) => {
      stopSearch = stop;
    });
    if (!searched.ok) {
      if (searched.faulty) await reportFindings(searched.findings, options, exitCodes.failedReplay);
      else await reportFindings(searched.findings, options);
      return null;
    }
    const findings: Finding[] = [];
    for (const [place, index] of missing.entries()) {
      const { name, prepared } = designs[index]!;
      const design = designOf(name, orderedOf(prepared), searched.plans[place]!);
      known[index] = design;
      if (keys === null || interrupts.pressed() || findings.length > 0) continue;
      await cache.keep(keys[index]!, { ok: true, design }).catch((error) => {
        findings.push(notKept(options.cache, systemReason(error)));
      });
    }
    return { comparison: compare(known.map((design) => design!)), findings };
  } finally {
    interrupts.end();
  }
}

/** What the results are kept under; null where they depend on how fast the machine is, or on the other designs. */
async function keysOf(
  designs: readonly ReadyDesign[],
  { seed, work = USUAL_WORK, time }: CompareOptions,
): Promise<readonly string[] | null> {
  if (time !== undefined || !isSearchedByItself(work)) return null;
  const keyOf = await designKeys();
  return designs.map(({ text, whatIf, prepared }) =>
    keyOf({ text, whatIf, library: orderedOf(prepared).library, seed, work }),
  );
}

function notKept(folder: string, reason: string): Finding {
  return {
    code: 'not-kept',
    severity: 'warning',
    message: `Results cannot be kept for another time: ${reason}.`,
    place: { file: folder },
    advice: 'name another folder with --cache',
  };
}

async function papersOf(
  comparison: Comparison,
  { designs, made }: ReadyDesigns,
  options: CompareOptions,
): Promise<ReadonlyMap<string, string>> {
  const [{ loadDrawingTools }, { loadPlotWindow }, { pageOfComparison }] = await Promise.all([
    import('../cutting/drawingTools.ts'),
    import('./plotWindow.ts'),
    import('../../src/pipeline/comparisonPage.ts'),
  ]);
  const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
  const tools = { ...(await loadDrawingTools()), window: await loadPlotWindow(), sha256 };
  const ordered = designs.map(({ prepared }) => orderedOf(prepared));
  const page = pageOfComparison(comparison, ordered, tools, options);
  return new Map([
    ['comparison.html', page],
    ...comparedLists(comparison),
    ...made.map(({ file, text }) => [`orders/${file}`, text] as const),
  ]);
}

async function tell(
  comparison: Comparison,
  findings: readonly Finding[],
  options: CompareOptions,
): Promise<void> {
  if (options.json) {
    const { designs, rows } = comparison;
    const document = { ok: true, exitCode: exitCodes.done, seed: options.seed, designs, rows, findings };
    return print(jsonText(document));
  }
  await print(describeComparison(comparison, coloursFor(process.stdout)));
  if (options.out !== undefined) {
    await print(`\n${options.out}/: comparison.html, compared-designs.csv, compared-sheets.csv\n`);
  }
  if (findings.length > 0) await printError(describeFindings(findings, coloursFor(process.stderr)));
}
