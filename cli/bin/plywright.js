#!/usr/bin/env node
import { runFromTerminal } from '../../dist/cli/main.js';

await runFromTerminal();
