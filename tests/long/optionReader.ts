import { type Command, CommanderError } from 'commander';
import { makeProgram } from '../../cli/main.ts';
import type { SeededRandom } from '../../src/basics/random.ts';
import type { Read, Reader } from './fuzzReaders.ts';

const FILE = 'command line';

/** What options are given, right and wrong. */
const VALUES = [
  '7',
  '0',
  '-1',
  '2.5',
  '1e9',
  '99999999999999999999',
  'NaN',
  '1,5',
  '3/4 in',
  '23 5/8 in',
  '-3',
  '100000.1',
  '2026-03-02',
  '2026-02-30',
  '2028-02-29',
  '5%',
  '5% of bought',
  '2 sheets',
  '90.01%',
  'en',
  'de',
  'fr',
  'mm',
  'inches',
  'inches-32',
  'book,labels',
  'all',
  'book,bok',
  'a4-3x8',
  'together',
  'apart',
  'length',
  'none',
  'rip',
  'either',
  'bed_width=1300',
  'bed_width=1200..1300',
  'bed_width=1200..1300/50',
  'front.finish=oak,slate',
  '=',
  'a=',
  '=b',
  'a=1..9999999/0.001',
  'a=1..0',
  'price,sheets',
  'poplar-15/1,poplar-15/2x3',
  'a/',
  '/1',
  'a/1x0',
  ',',
  ' ',
  '',
  'x'.repeat(3000),
  '__proto__',
  'constructor',
  '\u202ename',
  'a\u0000b',
  '\u001b[31m',
  '板',
  'e\u0301',
  '--',
  '-',
  '--json',
] as const;

const program = await makeProgram('1', 'all');

/** Every command with those below it. */
function commandsBelow(command: Command): Command[] {
  return command.commands.flatMap((below) => [below, ...commandsBelow(below)]);
}

/** The words by which a command is called. */
function wordsOf(command: Command): string[] {
  return command.parent === null ? [] : [...wordsOf(command.parent), command.name()];
}

/**
 * The options and arguments of every command, as texts of one word a line. A command that would be carried out has
 * accepted its words: what it does with them is left to tests of its own.
 */
export function optionReader(): Reader {
  const commands = commandsBelow(program);
  for (const command of [program, ...commands]) {
    command.exitOverride().configureOutput({ writeOut: () => {}, writeErr: () => {} });
    if (command.commands.length === 0) command.action(() => {});
  }

  function drawLine(random: SeededRandom): string {
    const pick = <T>(all: readonly T[]): T => all[random.below(all.length)]!;
    const command = pick(commands);
    const words = wordsOf(command);
    for (let more = random.below(6); more > 0; more--) {
      const option = random.below(8) === 0 ? pick(pick(commands).options) : pick(command.options);
      if (option !== undefined && random.below(4) > 0) words.push(option.long ?? '-h');
      if (random.below(3) > 0) words.push(pick(VALUES));
    }
    return words.join('\n');
  }

  return {
    name: 'options of the commands',
    file: FILE,
    texts: commands.map((command) => [...wordsOf(command), 'my-order.yaml', '--json'].join('\n')),
    near: (_, random) => drawLine(random),
    read: (text) => readWords(program, text.split('\n')),
  };
}

function readWords(program: Command, words: readonly string[]): Read {
  try {
    program.parse(words, { from: 'user' });
    return { ok: true, findings: [] };
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (error.exitCode === 0) return { ok: true, findings: [] };
    return {
      ok: false,
      findings: [
        {
          code: error.code,
          severity: 'error',
          message: sentence(error.message),
          place: { file: FILE },
        },
      ],
    };
  }
}

/** As the terminal shows it: the words of the user stand in it as they were given, whatever they hold. */
function sentence(message: string): string {
  const plain = message.replaceAll(/[\s\p{Cc}\p{Cs}]+/gu, ' ').trim();
  return `${plain.slice(0, 1000)}.`;
}
