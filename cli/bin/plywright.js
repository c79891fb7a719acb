#!/usr/bin/env node
import { printWrittenHelp } from '../../dist/cli/writtenHelp.js';

if (!printWrittenHelp(process.argv.slice(2))) {
  await import('../../dist/cli/compileLater.js');
  const { runFromTerminal } = await import('../../dist/cli/main.js');
  await runFromTerminal();
}
