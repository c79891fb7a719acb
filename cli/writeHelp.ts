import { writeFileSync } from 'node:fs';
import { helpOfProgram } from './main.ts';
import { WRITTEN_HELP } from './writtenHelp.ts';

// The last step of the build: the help as a file beside the program, so that asking for it loads nothing else.
writeFileSync(WRITTEN_HELP, await helpOfProgram());
