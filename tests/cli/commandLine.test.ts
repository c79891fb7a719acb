import { describe, expect, it } from 'vitest';
import { COMMANDS } from '../../cli/commands/commandTable.ts';
import { makeProgram } from '../../cli/main.ts';

describe('makeProgram', () => {
  it('lists each command, whether it is loaded or not, with what the command itself takes', async () => {
    const whole = await makeProgram('1', 'all');
    for (const command of whole.commands) {
      const { name, takes } = COMMANDS.find((entry) => entry.name === command.name())!;
      const options = command.options.length > 0 ? ['[options]'] : [];
      const own = command.registeredArguments.map((argument) => {
        const of = argument.name() + (argument.variadic ? '...' : '');
        return argument.required ? `<${of}>` : `[${of}]`;
      });
      expect(`${name} ${takes}`.trim()).toBe([name, ...options, ...own].join(' '));
      expect(command.summary()).not.toBe('');
    }
    expect(whole.commands.map((command) => command.name())).toEqual(COMMANDS.map(({ name }) => name));
    const light = await makeProgram('1', ['--help']);
    expect(light.helpInformation()).toBe(whole.helpInformation());
  });

  it('loads what it is called with, after help too, and no other', async () => {
    for (const words of [
      ['diff', 'old.yaml'],
      ['help', 'diff'],
      ['--', 'diff'],
    ]) {
      const program = await makeProgram('1', words);
      const loaded = program.commands.filter((command) => command.options.length > 0);
      expect(loaded.map((command) => command.name())).toEqual(['diff']);
    }
  });

  it('gives the loaded command the same help as all together', async () => {
    const whole = await makeProgram('1', 'all');
    for (const { name } of COMMANDS) {
      const alone = (await makeProgram('1', [name])).commands.find((command) => command.name() === name)!;
      const among = whole.commands.find((command) => command.name() === name)!;
      expect(alone.helpInformation()).toBe(among.helpInformation());
      expect(alone.commands.map((command) => command.helpInformation())).toEqual(
        among.commands.map((command) => command.helpInformation()),
      );
    }
  });
});
