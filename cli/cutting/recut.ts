import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import type { SheetSupply } from '../../src/model/stock.ts';
import type { Ledger } from '../../src/model/store.ts';
import { offcutsFor, planIsBooked, recutsBooked, sheetsFor } from '../../src/pipeline/keepStore.ts';
import {
  offcutsCutUp,
  offcutsOfPlan,
  type PieceWord,
  type PreparedRecut,
  prepareRecut,
} from '../../src/pipeline/recutPlan.ts';
import { readPlan } from '../../src/pipeline/replayPlan.ts';
import type { RecutOptions } from '../commands/recut.ts';
import { safeFileName } from '../files/fileName.ts';
import { diskReader } from '../files/reader.ts';
import { readStore } from '../store/ledgerFile.ts';
import { counted } from '../terminal/text.ts';
import { cutPrepared } from './cut.ts';
import { orderedByFile } from './orderedByFile.ts';
import type { PreparedJob } from './prepareJobs.ts';
import { type ProvenFile, readProvenPlan } from './readProvenPlan.ts';

/** Texts of labels, a line each; empty lines do not count. */
async function wordsOf(panels: readonly string[], labels: string | undefined): Promise<Checked<PieceWord[]>> {
  const given = panels.map((text): PieceWord => ({ text }));
  if (labels === undefined) return { ok: true, value: given, findings: [] };
  const text = await diskReader.text(labels, 'list');
  if (!text.ok) return text;
  const scanned = text.value.split(/\r\n|\r|\n/).flatMap((line, index): PieceWord[] => {
    return line.trim() === '' ? [] : [{ text: line.trim(), file: labels, line: index + 1 }];
  });
  if (scanned.length > 0 || given.length > 0) {
    return { ok: true, value: [...given, ...scanned], findings: [] };
  }
  const message = 'This file has no text of a label in it.';
  const finding: Finding = { code: 'no-labels', severity: 'error', message, place: { file: labels } };
  return { ok: false, findings: [finding] };
}

/** Earlier recuts of a job whose papers are in the same folder, by number. */
async function earlierRecuts(out: string, job: string): Promise<Map<number, PlanFile | null>> {
  const found = new Map<number, PlanFile | null>();
  const start = `${job}-recut-`;
  for (const name of (await readdir(out).catch(() => [] as string[])).sort()) {
    const number = /^[1-9]\d{0,5}$/.exec(name.startsWith(start) ? name.slice(start.length) : '')?.[0];
    if (number === undefined) continue;
    const path = join(out, name, 'plan.json');
    const text = await diskReader.text(path, 'plan');
    const plan = text.ok ? readPlan(text.value, path) : null;
    found.set(Number(number), plan?.ok ? plan.value : null);
  }
  return found;
}

interface OfferedOffcuts {
  readonly offcuts: readonly SheetSupply[];
  /** Where those of the store stand, by label. */
  readonly places: ReadonlyMap<string, string>;
}

/** What the rack has for a recut: of a store that knows the plan what is in it, otherwise what the plan keeps as well. */
function offcutsOffered(
  { plan, hash, job }: ProvenFile,
  ledger: Ledger | null,
  earlier: Iterable<PlanFile | null>,
  options: RecutOptions,
): OfferedOffcuts {
  const stored = ledger === null ? [] : offcutsFor(ledger, job);
  const places = new Map(
    [...(ledger?.stock.values() ?? [])].flatMap(({ item }) =>
      item.item === 'offcut' ? [[item.label.toUpperCase(), item.place] as const] : [],
    ),
  );
  const known = ledger !== null && planIsBooked(ledger, hash);
  const own = known ? [] : offcutsOfPlan(plan, job);
  const labels = new Set(own.map(({ id }) => id.toUpperCase()));
  const gone = new Set([...earlier].flatMap((one) => (one === null || known ? [] : offcutsCutUp(one))));
  const all = [...own, ...stored].filter(({ id }) => !gone.has(id));
  const allowed = all.filter(({ id }) => options.ownOffcuts || !labels.has(id.toUpperCase()));
  return { offcuts: allowed, places };
}

/** What a recut is cut from, in words: offcuts by label and place, and sheets by size. */
function cutFrom(plan: PlanFile, places: ReadonlyMap<string, string>): string[] {
  return plan.groups.flatMap((group) =>
    group.stock.flatMap(({ id, kind, length, width }) => {
      const count = group.sheets.reduce((sum, sheet) => (sheet.stock === id ? sum + sheet.copies : sum), 0);
      if (count === 0) return [];
      if (kind === 'sheet') return [`${counted(count, 'fresh sheet')} ${id}`];
      const place = places.get(id.toUpperCase()) ?? '';
      return [`offcut ${id}, ${length} × ${width}${place === '' ? '' : `, ${place}`}`];
    }),
  );
}

function preparedJob(
  { job, pieces }: PreparedRecut,
  file: string,
  folder: string,
  places: ReadonlyMap<string, string>,
): PreparedJob {
  const panels = pieces.map(({ number, piece, name, unit, code }) => ({ number, piece, name, unit, code }));
  const named = pieces.map(
    ({ number, piece, name, unit }) => `${number}/${piece} ${unit === '' ? name : `${name}, ${unit}`}`,
  );
  return {
    job,
    file,
    folder,
    told: (plan) => [`cut anew: ${named.join('; ')}`, `from: ${cutFrom(plan, places).join('; ')}`],
    data: (plan) => ({ recut: { ...plan.recut, panels, from: cutFrom(plan, places) } }),
  };
}

async function prepare(
  proven: ProvenFile,
  path: string,
  panels: readonly string[],
  options: RecutOptions,
): Promise<Checked<readonly PreparedJob[]>> {
  const words = await wordsOf(panels, options.labels);
  if (!words.ok) return words;
  const { plan, hash, job } = proven;
  const stored = options.store === undefined ? null : await readStore(options.store);
  if (stored !== null && !stored.ok) return stored;
  const ledger = stored === null ? null : stored.value.ledger;
  const ordered = await orderedByFile(options);
  if (!ordered.ok) return ordered;
  const earlier = await earlierRecuts(options.out, safeFileName(job));
  const offered = offcutsOffered(proven, ledger, earlier.values(), options);
  const last = Math.max(
    0,
    plan.recut?.number ?? 0,
    ...earlier.keys(),
    ...(ledger ? recutsBooked(ledger, job) : []),
  );
  const onHand = ledger !== null && options.sheetsOnHand ? sheetsFor(ledger, job) : undefined;
  const recut = prepareRecut({
    plan,
    planHash: hash,
    job,
    file: path,
    words: words.value,
    why: options.why,
    number: last + 1,
    rows: options.wholeRows ? 'whole' : 'as spoiled',
    offcuts: offered.offcuts,
    ...(onHand === undefined ? {} : { onHand }),
    ...(ordered.value === undefined ? {} : { ordered: ordered.value }),
    language: options.language,
  });
  const findings = [...(stored?.findings ?? []), ...recut.findings];
  if (!recut.ok) return { ok: false, findings };
  const folder = join(options.out, safeFileName(recut.value.job.name));
  return { ok: true, value: [preparedJob(recut.value, path, folder, offered.places)], findings };
}

/** Runs `plywright recut`: the plan is replayed before anything is cut anew by it. */
export async function recut(path: string, panels: readonly string[], options: RecutOptions): Promise<void> {
  const proven = await readProvenPlan(path, 'nothing was cut anew', options);
  if (proven !== null) await cutPrepared(await prepare(proven, path, panels, options), options);
}
