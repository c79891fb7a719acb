import { createHash } from 'node:crypto';
import { waysOf } from '../../src/basics/variations.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Order } from '../../src/model/order.ts';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import { type Sweep, sweepCsv, sweepOf, type WorkedOut } from '../../src/pipeline/sweepOrder.ts';
import type { SweepOptions } from '../commands/sweep.ts';
import { type ReadOrder, readOrderFile } from '../cutting/prepareJobs.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { systemReason } from '../files/systemReason.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import type { DesignRequest } from '../threads/designMessages.ts';
import { workOutInThreads } from '../threads/designPool.ts';
import { describeSweep } from './describeSweep.ts';
import { designKeys, type ResultCache, resultCache, underName } from './resultCache.ts';

/** What was done of a sweep: the results by point, null where it was ended before, and what the cache had. */
interface Done {
  readonly results: readonly (WorkedOut | null)[];
  readonly fromCache: number;
}

/** Runs `plywright sweep`: sets the exit code. */
export async function sweep(file: string, options: SweepOptions): Promise<void> {
  const { vary = [], library } = options;
  const asked = { set: options.set ?? [], ...(library === undefined ? {} : { library }) };
  const read = await readOrderFile(file, asked, new Map());
  if (!read.ok) return reportFindings(read.findings, options);
  const order = furnishOrder(read.value.text, file, read.value.library, read.value.whatIf);
  if (!order.ok) return reportFindings([...read.findings, ...order.findings], options);
  const unknown = wrongParameters(read.value, file, options);
  const existing = options.replace ? 'replace edited' : 'keep edited';
  const inTheWay = options.out === undefined ? [] : await diskWriter.look(options.out, existing);
  if (unknown.length + inTheWay.length > 0) return reportFindings([...unknown, ...inTheWay], options);
  const ways = waysOf(vary);
  const done = await workOut(read.value, file, order.value.order, ways, options);
  if (!done.ok) return reportFindings(done.findings, options);
  if (done.value.results.includes(null)) {
    const kept = done.value.results.filter((result) => result !== null).length;
    await printError(
      `ended; ${kept} of ${ways.length} points are kept, and the same command goes on with them\n`,
    );
    return endWith(exitCodes.interrupted);
  }
  const tried = done.value.results.map((result, index) => ({
    values: ways[index]!.map((way) => way.slice(way.indexOf('=') + 1)),
    result: result!,
  }));
  const swept = sweepOf(
    vary.map(({ what }) => what),
    tried,
  );
  if (options.out !== undefined) {
    const failed = await diskWriter.papers(
      options.out,
      await papersOf(swept, order.value.order.title, options),
      existing,
    );
    if (failed.length > 0) return reportFindings(failed, options);
  }
  await tell(swept, order.value.order, read.findings, options);
  endWith(exitCodes.done);
}

/** What is varied must be there: a value may be refused at some points, a name that is wrong is wrong at all. */
function wrongParameters(
  { text, library, whatIf }: ReadOrder,
  file: string,
  { vary = [] }: SweepOptions,
): Finding[] {
  return vary.flatMap(({ what, values }) => {
    const set = [...whatIf.set, `${what}=${values[0]}`];
    const tried = furnishOrder(text, file, library, { ...whatIf, set });
    const names = new Set(['unknown-word', 'unknown-parameter', 'already-left-out', 'wrong-form']);
    const own = (found: Finding) => found.place?.file.startsWith(`--set ${what}=`) && names.has(found.code);
    return tried.findings
      .filter(own)
      .map((found) => ({ ...found, place: { file: `--vary ${what}=${values.join(',').slice(0, 40)}` } }));
  });
}

type Checked<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly findings: readonly Finding[] };

/** Works every point out that the cache has not; each is kept as soon as it is there. */
async function workOut(
  read: ReadOrder,
  file: string,
  order: Order,
  ways: readonly (readonly string[])[],
  options: SweepOptions,
): Promise<Checked<Done>> {
  const { seed, work, threads } = options;
  const cache = resultCache(options.cache);
  const keyOf = await designKeys();
  const { text, library, whatIf } = read;
  const sets = ways.map((way) => [...whatIf.set, ...way]);
  const names = ways.map((way) => `${order.id}, ${way.join(', ')}`);
  const content = { text, library, seed, work };
  const keys = sets.map((set) => keyOf({ ...content, whatIf: { ...whatIf, set } }));
  const results: (WorkedOut | null)[] = await Promise.all(
    keys.map(async (key, index) => {
      const kept = await cache.read(key);
      return kept && underName(kept, names[index]!);
    }),
  );
  const fromCache = results.filter((result) => result !== null).length;
  const requests = names.flatMap((name, index): DesignRequest[] =>
    results[index] === null ? [{ index, name, set: sets[index]! }] : [],
  );
  let stopping = false;
  const stop = () => {
    if (stopping) process.exit(exitCodes.interrupted);
    stopping = true;
  };
  process.on('SIGINT', stop);
  const progress = sweepProgress(process.stderr, ways.length, fromCache, options);
  try {
    const data = { library, text, file, below: whatIf.below, seed, workLimit: work };
    await workOutInThreads(requests, data, {
      ...(threads === undefined ? {} : { threads }),
      stopped: () => stopping,
      done: async (index, result) => {
        results[index] = result;
        await keep(cache, keys[index]!, result);
        progress.one();
      },
    });
  } catch (fault) {
    if (fault instanceof CacheFault) return { ok: false, findings: [fault.finding(options.cache)] };
    throw fault;
  } finally {
    progress.clear();
    process.off('SIGINT', stop);
  }
  return { ok: true, value: { results, fromCache } };
}

/** The cache cannot be written. */
class CacheFault extends Error {
  finding(folder: string): Finding {
    return {
      code: 'cannot-write',
      severity: 'error',
      message: `Results cannot be kept here: ${this.message}.`,
      place: { file: folder },
      advice: 'name another folder with --cache',
    };
  }
}

async function keep(cache: ResultCache, key: string, result: WorkedOut): Promise<void> {
  await cache.keep(key, result).catch((error) => {
    throw new CacheFault(systemReason(error));
  });
}

/** `37 of 200 points, 12 of them from the cache; some 41 s left`. The time left is that of the points so far. */
export function sweepProgressText(done: number, all: number, fromCache: number, seconds: number): string {
  const fresh = done - fromCache;
  const left = fresh > 0 ? `; some ${Math.ceil((seconds / fresh) * (all - done))} s left` : '';
  const cached = fromCache > 0 ? `, ${fromCache} of them from the cache` : '';
  return `${done} of ${all} points${cached}${left} (Ctrl-C keeps what is done)`;
}

function sweepProgress(stream: NodeJS.WriteStream, all: number, fromCache: number, { json }: SweepOptions) {
  const shown = stream.isTTY === true && !json;
  const started = performance.now();
  let done = fromCache;
  const draw = () => {
    const text = sweepProgressText(done, all, fromCache, (performance.now() - started) / 1000);
    if (shown) stream.write(`\r\u001b[2K${text.slice(0, 79)}`);
  };
  return {
    one: () => {
      done++;
      draw();
    },
    clear: () => void (shown && stream.write('\r\u001b[2K')),
  };
}

async function papersOf(
  swept: Sweep,
  title: string,
  { language }: SweepOptions,
): Promise<ReadonlyMap<string, string>> {
  const [{ loadPlotWindow }, { pageOfSweep }] = await Promise.all([
    import('./plotWindow.ts'),
    import('../../src/pipeline/comparisonPage.ts'),
  ]);
  const window = await loadPlotWindow();
  const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('base64');
  return new Map([
    ['sweep.html', pageOfSweep(swept, title, { window, sha256 }, language)],
    ['sweep.csv', sweepCsv(swept)],
  ]);
}

async function tell(
  swept: Sweep,
  order: Order,
  findings: readonly Finding[],
  options: SweepOptions,
): Promise<void> {
  if (options.json) {
    const { seed, work } = options;
    const about = { ok: true, exitCode: exitCodes.done, order: order.id, seed, work };
    return print(jsonText({ ...about, ...swept, findings }));
  }
  await print(describeSweep(swept));
  if (options.out !== undefined) await print(`\n${options.out}/: sweep.html, sweep.csv\n`);
  if (findings.length > 0) await printError(describeFindings(findings, coloursFor(process.stderr)));
}
