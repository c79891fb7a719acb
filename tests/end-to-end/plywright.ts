import { type ChildProcess, fork, spawn } from 'node:child_process';
import { resolve } from 'node:path';

export const projectFolder = resolve(import.meta.dirname, '../..');
const command = resolve(projectFolder, 'cli/bin/plywright.js');

/** How a run of the command ended. */
export interface Ended {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface Running {
  readonly child: ChildProcess;
  readonly ended: Promise<Ended>;
}

/** Starts the built command in a folder, without a terminal and without input. */
export function start(folder: string, args: readonly string[], environment: NodeJS.ProcessEnv = {}): Running {
  const child = spawn(process.execPath, [command, ...args], {
    cwd: folder,
    env: { PATH: process.env['PATH'], HOME: process.env['HOME'], ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let stdout = '';
  let stderr = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    stdout += text;
  });
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    stderr += text;
  });
  const ended = new Promise<Ended>((settle, reject) => {
    child.on('error', reject);
    child.on('close', (code, signal) => settle({ code, signal, stdout, stderr }));
  });
  return { child, ended };
}

/** Commands that search, and what they are told here where a test does not say otherwise. */
const searching = new Set(['cut', 'recut', 'buy']);

/** The process that runs the commands of a test file one after the other, and whoever waits for its answer. */
let host: { readonly child: ChildProcess; settle: ((ended: Ended) => void) | null } | null = null;

function startHost(): NonNullable<typeof host> {
  const child = fork(resolve(import.meta.dirname, 'commandHost.mjs'), {
    cwd: projectFolder,
    env: { PATH: process.env['PATH'], HOME: process.env['HOME'] },
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
    // As the command has it, see cli/compileLater.ts.
    execArgv: ['--no-incremental-marking'],
  });
  const made: NonNullable<typeof host> = { child, settle: null };
  let text = '';
  child.stdout!.setEncoding('utf8').on('data', (chunk: string) => {
    text += chunk;
    if (!text.endsWith('\n')) return;
    const { isLast, ...ended } = JSON.parse(text) as Omit<Ended, 'signal'> & { isLast: boolean };
    text = '';
    if (isLast) host = null;
    made.settle?.({ signal: null, ...ended });
    made.settle = null;
  });
  child.on('close', (code, signal) => {
    if (host === made) host = null;
    const stderr = `the process that runs the commands was ended: ${signal ?? code}`;
    made.settle?.({ code, signal, stdout: '', stderr });
  });
  return made;
}

/**
 * Runs a command line of the built command in a folder to its end, in a process that this file's command lines share
 * (`commandHost.mjs`): it is the same program with the same words, without the second or two that each start takes. A
 * search is held to one thread unless the arguments say otherwise: no result depends on how many there are
 * (`plainLists.test.ts` holds that), and the test beside this one needs the other core.
 */
export function plywright(folder: string, args: readonly string[]): Promise<Ended> {
  const isAlone = searching.has(args[0] ?? '') && !args.includes('--threads');
  const asked = isAlone ? [...args, '--threads', '1'] : args;
  if (host !== null && host.settle !== null) return start(folder, asked).ended;
  host ??= startHost();
  const { child } = host;
  return new Promise((settle) => {
    host!.settle = settle;
    child.send({ folder: resolve(folder), args: asked });
  });
}

/** Runs a command line in a process of its own, as at a terminal, with threads as the machine has them. */
export function plywrightAlone(
  folder: string,
  args: readonly string[],
  environment: NodeJS.ProcessEnv = {},
): Promise<Ended> {
  return start(folder, args, environment).ended;
}
