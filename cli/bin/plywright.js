#!/usr/bin/env node
import '../../dist/cli/compileLater.js';
import { runFromTerminal } from '../../dist/cli/main.js';

await runFromTerminal();
