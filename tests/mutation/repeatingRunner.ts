import type { RunnerTestCase, RunnerTestSuite } from 'vitest';
import { TestRunner } from 'vitest';
import { type FromTests, Line, type Loaded, type ToTests, type Tried, type TryChange } from './messages.ts';

/** What the changed code reads and writes, under the name that the tester gives it. */
interface Switches {
  activeMutant?: string | undefined;
  currentTestId?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  mutantCoverage?: { -readonly [Field in keyof Loaded['reached']]: Loaded['reached'][Field] };
  doneOnLoading?: Loaded['reached'];
}

const world = globalThis as { __stryker__?: Switches };
world.__stryker__ ??= {};
const switches = world.__stryker__;

/**
 * Loads the tests once, runs them without a change, and then again and again with the changes it is told of. Loading took
 * nearly all of the time of a change when each was tried in a thread of its own.
 *
 * Whatever the tests keep from one change to the next was made by the code as it is, since every test has run twice before
 * the first change.
 */
export default class RepeatingRunner extends TestRunner {
  override async onAfterRunFiles(files?: readonly RunnerTestSuite[]): Promise<void> {
    super.onAfterRunFiles();
    const line = new Line<FromTests, ToTests>('tests');
    const tests = new Map((files ?? []).flatMap(testsOf).map((test, at) => [nameOf(test, at), test]));
    const wrong = (files ?? []).flatMap((file) => file.result?.errors ?? []);
    if (wrong[0] !== undefined || tests.size === 0) {
      line.send({ kind: 'broken', fault: wrong[0]?.stack ?? 'no test was found' });
    } else {
      const loaded = await runUnchanged(tests);
      line.send(loaded);
      // Quick tests first: most changes are seen by one of them.
      const times = new Map(loaded.tests.map(({ name, ms }) => [name, ms]));
      for (let told = await line.next(); told.kind === 'try'; told = await line.next()) {
        const near = [...told.tests].sort((a, b) => (times.get(a) ?? 0) - (times.get(b) ?? 0));
        line.send(await runChanged(told, near, tests));
      }
    }
    line.close();
  }
}

function testsOf(suite: RunnerTestSuite): RunnerTestCase[] {
  return suite.tasks
    .flatMap((task) => (task.type === 'suite' ? testsOf(task) : [task]))
    .filter((task) => task.mode === 'run');
}

function nameOf(test: RunnerTestCase, at: number): string {
  return `${at} ${test.fullTestName}`;
}

async function runUnchanged(tests: ReadonlyMap<string, RunnerTestCase>): Promise<Loaded> {
  // The changed code holds on to this value, so that only its fields can be replaced.
  switches.mutantCoverage ??= { static: {}, perTest: {} };
  const counted = switches.mutantCoverage;
  const perTest: Loaded['reached']['perTest'] = {};
  counted.perTest = perTest;
  const ran = [];
  for (const [name, test] of tests) {
    // What a suite prepares belongs to each of its tests.
    switches.currentTestId = name;
    const began = performance.now();
    const fault = await runTest(test, new Set());
    ran.push({ name, ms: performance.now() - began, fault });
    switches.currentTestId = undefined;
  }
  // From now on nobody looks at what is counted, and counting for one name costs least.
  counted.static = {};
  counted.perTest = {};
  return { kind: 'loaded', tests: ran, reached: { static: switches.doneOnLoading?.static ?? {}, perTest } };
}

async function runChanged(
  told: TryChange,
  near: readonly string[],
  tests: ReadonlyMap<string, RunnerTestCase>,
): Promise<FromTests> {
  switches.activeMutant = told.change;
  switches.hitCount = 0;
  switches.hitLimit = told.mostReached;
  const prepared = new Set<RunnerTestSuite>();
  let failed: (Tried['failed'] & { readonly of: RunnerTestCase }) | null = null;
  let ran = 0;
  for (const name of near) {
    const test = tests.get(name);
    if (test === undefined) throw new Error(`no test is called ${name}`);
    const fault = await runTest(test, prepared);
    ran += 1;
    if (fault !== null) {
      failed = { test: name, fault, of: test };
      break;
    }
  }
  const endless = told.mostReached !== undefined && (switches.hitCount ?? 0) > told.mostReached;
  switches.activeMutant = undefined;
  switches.hitCount = undefined;
  if (failed === null || endless) return { kind: 'tried', ran, failed: null, endless };
  // A change that leaves something behind would make all later ones look caught.
  const still = await runTest(failed.of, new Set());
  if (still !== null) return { kind: 'broken', fault: `without the change, too: ${still}` };
  return { kind: 'tried', ran, failed: { test: failed.test, fault: failed.fault }, endless };
}

/** Runs one test with what its suites prepare, unless they are among the prepared ones; null, or what went wrong. */
async function runTest(test: RunnerTestCase, prepared: Set<RunnerTestSuite>): Promise<string | null> {
  try {
    const around: RunnerTestSuite[] = [];
    for (let suite = test.suite; suite !== undefined; suite = suite.suite) around.unshift(suite);
    for (const suite of around) {
      if (prepared.has(suite)) continue;
      prepared.add(suite);
      for (const hook of TestRunner.getSuiteHooks(suite).beforeAll) await hook(suite);
    }
    test.promises = [];
    await TestRunner.getTestFn(test)();
    return null;
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}
