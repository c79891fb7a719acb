import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';

/** Builds the command that the tests of this folder start. */
export default function buildCommand(): void {
  const root = resolve(import.meta.dirname, '../..');
  execFileSync(process.execPath, [resolve(root, 'node_modules/typescript/bin/tsc'), '-b', 'cli'], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
}
