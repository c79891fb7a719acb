import { readFileSync } from 'node:fs';
import { Command, CommanderError } from 'commander';
import { addAdviseCommand } from './commands/advise.ts';
import { addBuyCommand } from './commands/buy.ts';
import { addCheckCommand } from './commands/check.ts';
import { addCompareCommand } from './commands/compare.ts';
import { addCutCommand } from './commands/cut.ts';
import { addDiffCommand } from './commands/diff.ts';
import { addDrawCommand } from './commands/draw.ts';
import { addListCommand } from './commands/list.ts';
import { addPanelsCommand } from './commands/panels.ts';
import { addQuoteCommand } from './commands/quote.ts';
import { addRecutCommand } from './commands/recut.ts';
import { addReplayCommand } from './commands/replay.ts';
import { addStockCommand } from './commands/stock.ts';
import { addSweepCommand } from './commands/sweep.ts';
import { addYearCommand } from './commands/year.ts';
import { type ExitCode, exitCodeHelp, exitCodes } from './exitCodes.ts';
import { endWith, OutputFault, printError } from './terminal/output.ts';
import { isOutOfMemory, LostThread } from './threads/lostThread.ts';

const examples = `
Examples:
  plywright cut parts-libraries/demo-van/orders/demo-long.yaml
  plywright cut my-order.yaml --out jobs
  plywright cut --panels list.csv --sheets sheets.csv --kerf 3.2 --trim 10
  plywright panels my-order.yaml --csv
  plywright draw my-order.yaml
  plywright check my-order.yaml
  plywright quote my-order.yaml
  plywright diff my-order.yaml my-changed-order.yaml
  plywright compare my-order.yaml my-variant.yaml
  plywright sweep my-order.yaml --vary bed_width=1200..1350/10
  plywright advise my-order.yaml --may bed_width=1200..1300
  plywright replay out/demo-long/plan.json
  plywright recut out/demo-long/plan.json 12 --why 'corner torn out'
  plywright list units --library demo-van
  plywright buy my-order.yaml your-order.yaml
  plywright stock show
  plywright year my-year.yaml

'plywright COMMAND --help' says more about a command.
`;

function versionOfPackage(): string {
  const about = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as {
    version: string;
  };
  return about.version;
}

/** The command line with all its commands; nothing is run yet. `version` is what `--version` prints. */
export function makeProgram(version: string): Command {
  const program = new Command('plywright')
    .description("From a customer's order for a van interior to cut, edged and labelled panels.")
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [COMMAND]', 'print the help of a command')
    .configureHelp({ helpWidth: 80, showGlobalOptions: false })
    .showHelpAfterError("'plywright --help' lists the commands, with examples.")
    .addHelpText('after', examples + exitCodeHelp);
  addCutCommand(program);
  addPanelsCommand(program);
  addCheckCommand(program);
  addDrawCommand(program);
  addQuoteCommand(program);
  addDiffCommand(program);
  addCompareCommand(program);
  addSweepCommand(program);
  addAdviseCommand(program);
  addReplayCommand(program);
  addRecutCommand(program);
  addListCommand(program);
  addBuyCommand(program);
  addStockCommand(program);
  addYearCommand(program);
  for (const command of program.commands) {
    command
      .helpOption('-h, --help', 'print this help')
      .configureHelp({ helpWidth: 80 })
      .showHelpAfterError(`'plywright ${command.name()} --help' shows how it is used, with examples.`);
  }
  for (const command of [program, ...program.commands]) command.exitOverride();
  return program;
}

/** What stopped the program without being its fault; null for a fault. */
function describeMishap(fault: unknown): { readonly text: string; readonly code: ExitCode } | null {
  if (fault instanceof OutputFault) return { text: `${fault.message}\n`, code: exitCodes.cannotReadOrWrite };
  if (fault instanceof LostThread && fault.loss === 'ended') {
    const text = 'A thread of the search was ended from outside, so no papers were written: try again.\n';
    return { text, code: exitCodes.outOfMemory };
  }
  if (!(fault instanceof LostThread) && !isOutOfMemory(fault)) return null;
  const text =
    'Memory ran out, so no papers were written. Fewer threads at once need less of it\n' +
    '(--threads 1), and so do shorter lists and fewer orders at a time.\n';
  return { text, code: exitCodes.outOfMemory };
}

/** One sentence for a fault of the program; the stack only for those who ask for it. */
async function reportFault(fault: unknown): Promise<void> {
  if (fault instanceof OutputFault && process.exitCode === exitCodes.cannotReadOrWrite) return;
  const mishap = describeMishap(fault);
  endWith(mishap?.code ?? exitCodes.failedReplay);
  const message = fault instanceof Error ? fault.message : String(fault);
  const first = (message.split('\n')[0] ?? '').slice(0, 300);
  await printError(
    mishap?.text ??
      `plywright has a fault: ${first}\n` +
        'Nothing was written. Please report it with the order or list that led to it\n' +
        'and what PLYWRIGHT_DEBUG=1 in the environment prints in addition.\n',
  );
  if (process.env['PLYWRIGHT_DEBUG'] && fault instanceof Error) {
    await printError(`${(fault.stack ?? '').slice(0, 5000)}\n`);
  }
}

/** Runs the command line that the process was started with and sets the exit code; never throws. */
export async function runFromTerminal(): Promise<void> {
  const stopAtFault = (fault: unknown) => void reportFault(fault).finally(() => process.exit());
  process.on('uncaughtException', stopAtFault);
  process.on('unhandledRejection', stopAtFault);
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit();
    // The help is printed by the parser of the command line, which asks for no answer.
    if (process.exitCode === undefined || process.exitCode === exitCodes.done)
      void reportFault(new OutputFault(error));
  });
  process.stderr.on('error', () => undefined);
  try {
    await makeProgram(versionOfPackage()).parseAsync();
  } catch (error) {
    if (error instanceof CommanderError) endWith(error.exitCode === 0 ? exitCodes.done : exitCodes.wrongUse);
    else await reportFault(error);
  }
}
