import fc from 'fast-check';
import { SeededRandom } from '../../src/basics/random.ts';
import { mutations } from '../helpers/mutateText.ts';
import { allReaders, type Read, type Reader } from './fuzzReaders.ts';

/** A text that a reader does not stand. */
export interface Fault {
  readonly reader: string;
  readonly wrong: string;
  readonly text: string;
}

export interface FuzzCounts {
  cases: number;
  /** Of them those that were accepted all the same. */
  accepted: number;
  slowestMs: number;
  /** Processor time by reader, so that what the run spends its time on is seen. */
  readonly msOf: Map<string, number>;
  readonly casesOf: Map<string, number>;
  readonly faults: Fault[];
}

export interface Fuzzing {
  readonly seed: number;
  readonly cases: number;
  /** A case that takes longer is a fault; none where a busy machine must not decide. */
  readonly mostMs?: number;
  readonly stop?: () => boolean;
  /** Told after each case. */
  readonly done?: (counts: FuzzCounts) => void;
  /** Milliseconds since some moment; of the processor, where a busy machine must not decide. */
  readonly now: () => number;
}

/** Changes are drawn so many at a time. */
const BATCH = 50;
/** What people never should see: where in the program something went wrong. */
const STACK_TRACE = /\bat .{1,200}:\d+:\d+|node:internal|\[object |undefined is not|Cannot read propert/;

/** Hands changed and made-up texts to every reader in turn. The same seed tries the same texts in the same order. */
export function fuzz({ seed, cases, mostMs, stop, done, now }: Fuzzing): FuzzCounts {
  const counts: FuzzCounts = {
    cases: 0,
    accepted: 0,
    slowestMs: 0,
    casesOf: new Map(),
    msOf: new Map(),
    faults: [],
  };
  const random = new SeededRandom(seed);
  const turns = turnsOf(allReaders(random));
  let changes: ((text: string) => string)[] = [];
  while (counts.cases < cases && !stop?.()) {
    if (changes.length === 0) changes = fc.sample(mutations, { seed: random.below(2 ** 31), numRuns: BATCH });
    const change = changes.pop()!;
    const reader = turns[counts.cases % turns.length]!;
    const text = drawText(reader, change, random);
    counts.cases += 1;
    counts.casesOf.set(reader.name, (counts.casesOf.get(reader.name) ?? 0) + 1);
    const started = now();
    let wrong: string | null;
    try {
      const read = reader.read(text);
      if (read.ok) counts.accepted += 1;
      wrong = wrongWith(read, reader);
    } catch (error) {
      wrong = `throws ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`;
    }
    const tookMs = now() - started;
    counts.msOf.set(reader.name, (counts.msOf.get(reader.name) ?? 0) + tookMs);
    counts.slowestMs = Math.max(counts.slowestMs, tookMs);
    if (mostMs !== undefined && tookMs > mostMs) wrong ??= `takes ${Math.round(tookMs)} ms`;
    if (wrong !== null) counts.faults.push({ reader: reader.name, wrong, text });
    done?.(counts);
  }
  return counts;
}

/** The readers in the order in which they are tried, over and over; of the files of a folder one has its turn in each round. */
function turnsOf(readers: readonly Reader[]): readonly Reader[] {
  const filesOfFolder = readers.filter(({ readsFolder }) => readsFolder);
  const others = readers.filter(({ readsFolder }) => !readsFolder);
  return filesOfFolder.flatMap((file) => [...others, file]);
}

function drawText(reader: Reader, change: (text: string) => string, random: SeededRandom): string {
  const pick = <T>(all: readonly T[]): T => all[random.below(all.length)]!;
  const text = pick(reader.texts);
  const drawn = random.below(20);
  if (drawn === 0) return pick(EXTREMES)(text, random);
  if (reader.near !== undefined && drawn < 10) return reader.near(text, random);
  if (drawn === 1) {
    // A text that is another's from somewhere on.
    const other = pick(reader.texts);
    return text.slice(0, random.below(text.length + 1)) + other.slice(random.below(other.length + 1));
  }
  return change(text);
}

/** Texts of no sense, deep, long or heavy. */
const EXTREMES: readonly ((text: string, random: SeededRandom) => string)[] = [
  (_, random) =>
    Array.from({ length: random.below(300) }, () =>
      String.fromCharCode(random.below(3) === 0 ? random.below(65_536) : 32 + random.below(95)),
    ).join(''),
  (_, random) => pick2(random, ['[', '{"a":', '- ', '? ', '{a: ', '"', '(', '&a [', ' '])(20_000),
  (text, random) => text.repeat(1 + random.below(40)),
  (text, random) => {
    const at = random.below(text.length + 1);
    return (
      text.slice(0, at) +
      pick2(random, ['9', 'x', ',', '"', '\n', '\\', '(', '1+', '\u0301'])(20_000) +
      text.slice(at)
    );
  },
  // Names that grow by a factor with every line.
  (text) =>
    `${Array.from(
      { length: 12 },
      (_, level) =>
        `a${level}: &a${level} [${
          level === 0
            ? 'x'
            : Array(9)
                .fill(`*a${level - 1}`)
                .join(', ')
        }]`,
    ).join('\n')}\n${text}`,
  (text) => `\ufeff${text}`,
  () => '',
];

function pick2(random: SeededRandom, all: readonly string[]): (most: number) => string {
  const one = all[random.below(all.length)]!;
  return (most) => one.repeat(random.below(most));
}

/** What a person could not work with, in what a reader says. */
function wrongWith(read: Read, { file }: Reader): string | null {
  if (read.ok === read.findings.some(({ severity }) => severity === 'error'))
    return read.ok ? 'accepts a text that it has errors for' : 'refuses a text without saying why';
  for (const finding of read.findings) {
    const { message, place, found, expected, advice } = finding;
    if (!/^[^\p{Cc}\p{Cs}]{5,}[.?!]$/u.test(message)) return `says ${JSON.stringify(message)}`;
    if (place?.file === undefined || !place.file.startsWith(file)) return `names no file: ${message}`;
    for (const said of [message, found, expected, advice, place.field]) {
      if (said === undefined) continue;
      if (STACK_TRACE.test(said)) return `says ${JSON.stringify(said.slice(0, 300))}`;
      if (said.length > 2000) return `says ${said.length} characters, ${JSON.stringify(said.slice(0, 100))}`;
    }
  }
  return null;
}
