import { type ChildProcess, spawn } from 'node:child_process';
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

/** Runs the built command in a folder to its end. */
export function plywright(
  folder: string,
  args: readonly string[],
  environment: NodeJS.ProcessEnv = {},
): Promise<Ended> {
  return start(folder, args, environment).ended;
}
