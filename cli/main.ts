import { readFileSync } from 'node:fs';
import { Command, CommanderError, Help } from 'commander';
import { COMMANDS, type CommandEntry } from './commands/commandTable.ts';
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

/** Adds the command itself, or where it is not called only what the program's help and its advice on mistyped names need. */
async function addCommand(program: Command, entry: CommandEntry, isCalled: boolean): Promise<void> {
  const { name, summary } = entry;
  if (isCalled) (await entry.load())(program);
  else program.command(name);
  program.commands
    .at(-1)!
    .summary(summary)
    .helpOption('-h, --help', 'print this help')
    .configureHelp({ helpWidth: 80 })
    .showHelpAfterError(`'plywright ${name} --help' shows how it is used, with examples.`)
    .exitOverride();
}

/**
 * The command line; nothing is run yet. `version` is what `--version` prints. Of the commands those are there in whole
 * whose names are among `words`, what the program was called with; a command's options take as long to load as the help.
 */
export async function makeProgram(version: string, words: readonly string[] | 'all'): Promise<Command> {
  const termOf = new Map(COMMANDS.map(({ name, takes }) => [name, takes === '' ? name : `${name} ${takes}`]));
  const usual = new Help();
  const program = new Command('plywright')
    .description("From a customer's order for a van interior to cut, edged and labelled panels.")
    .version(version, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print this help')
    .helpCommand('help [COMMAND]', 'print the help of a command')
    .configureHelp({
      helpWidth: 80,
      showGlobalOptions: false,
      subcommandTerm: (command) => termOf.get(command.name()) ?? usual.subcommandTerm(command),
    })
    .showHelpAfterError("'plywright --help' lists the commands, with examples.")
    .addHelpText('after', examples + exitCodeHelp);
  for (const entry of COMMANDS) {
    await addCommand(program, entry, words === 'all' || words.includes(entry.name));
  }
  return program.exitOverride();
}

/** The help as `plywright --help` prints it. */
export async function helpOfProgram(): Promise<string> {
  let text = '';
  // The version is not part of it.
  const program = await makeProgram('', []);
  program.configureOutput({
    writeOut: (part) => {
      text += part;
    },
  });
  program.outputHelp();
  return text;
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

/** What is done when standard output cannot be written and nobody waits for the answer, as with the help. */
export function answerLostOutput(error: NodeJS.ErrnoException): void {
  // A reader such as `head` may have seen enough.
  if (error.code === 'EPIPE') process.exit();
  if (process.exitCode === undefined || process.exitCode === exitCodes.done) {
    void reportFault(new OutputFault(error));
  }
}

/** Runs the command line that the process was started with and sets the exit code; never throws. */
export async function runFromTerminal(): Promise<void> {
  const stopAtFault = (fault: unknown) => void reportFault(fault).finally(() => process.exit());
  process.on('uncaughtException', stopAtFault);
  process.on('unhandledRejection', stopAtFault);
  process.stdout.on('error', answerLostOutput);
  process.stderr.on('error', () => undefined);
  try {
    const program = await makeProgram(versionOfPackage(), process.argv.slice(2));
    await program.parseAsync();
  } catch (error) {
    if (error instanceof CommanderError) endWith(error.exitCode === 0 ? exitCodes.done : exitCodes.wrongUse);
    else await reportFault(error);
  }
}
