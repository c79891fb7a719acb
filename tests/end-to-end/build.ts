import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';

/** Builds the command that the tests of this folder start. */
export default function buildCommand(): void {
  const root = resolve(import.meta.dirname, '../..');
  const steps = [
    [resolve(root, 'node_modules/typescript/bin/tsc'), '-b', 'cli'],
    [resolve(root, 'dist/cli/writeHelp.js')],
  ];
  for (const step of steps) {
    execFileSync(process.execPath, step, { cwd: root, stdio: ['ignore', 'inherit', 'inherit'] });
  }
}
