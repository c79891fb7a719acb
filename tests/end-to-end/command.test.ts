import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { helpOfProgram } from '../../cli/main.ts';
import { temporaryFolder } from '../cli/temporaryFolder.ts';
import { plywright, plywrightAlone, projectFolder } from './plywright.ts';

/** Packages reached from a built module through imports that are followed before anything runs. */
function packagesLoadedAtStart(entry: string): string[] {
  const packages = new Set<string>();
  const seen = new Set<string>();
  const follow = (file: string): void => {
    if (seen.has(file)) return;
    seen.add(file);
    for (const [, from = ''] of readFileSync(file, 'utf8').matchAll(
      /^(?:import|export)(?: [^;']*? from)? '([^']+)';/gm,
    )) {
      if (from.startsWith('.')) follow(join(dirname(file), from));
      else if (!from.startsWith('node:')) packages.add(from);
    }
  };
  follow(entry);
  return [...packages].sort();
}

const commands = [
  'cut',
  'panels',
  'draw',
  'check',
  'replay',
  'recut',
  'buy',
  'list',
  'stock',
  'advise',
  'year',
];

describe('help', () => {
  const folder = temporaryFolder();

  it('lists the commands, with examples and exit codes, in 80 columns', async () => {
    const help = await plywrightAlone(folder, ['--help']);
    expect(help).toMatchObject({ code: 0, stderr: '' });
    for (const word of [...commands, 'Examples:', 'Exit codes', '130']) expect(help.stdout).toContain(word);
    expect(help.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('is printed as the program would make it, however it is asked for', async () => {
    const made = await helpOfProgram();
    for (const word of ['--help', '-h', 'help']) {
      expect((await plywrightAlone(folder, [word])).stdout).toBe(made);
      // The shared process does not read the file that the build wrote.
      expect((await plywright(folder, [word])).stdout).toBe(made);
    }
    expect(readFileSync(join(projectFolder, 'dist/cli/help.txt'), 'utf8')).toBe(made);
    expect(packagesLoadedAtStart(join(projectFolder, 'dist/cli/writtenHelp.js'))).toEqual([]);
  });

  it.each(commands)('of %s has examples that start with the name of the program', async (command) => {
    const help = await plywrightAlone(folder, [command, '--help']);
    expect(help).toMatchObject({ code: 0, stderr: '' });
    expect(help.stdout).toMatch(new RegExp(`Examples:\n {2}plywright ${command} ?`));
    expect(help.stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  it('loads nothing but what reads the command line, so that it comes at once', () => {
    expect(packagesLoadedAtStart(join(projectFolder, 'dist/cli/main.js'))).toEqual(['commander']);
  });
});

describe('a command that is not understood', () => {
  it.each([
    [['cutt'], 'Did you mean cut?'],
    [['cut'], 'give an order file'],
    [['cut', 'a.yaml', '--panels', 'b.csv', '--sheets', 'c.csv'], 'not both'],
    [['cut', '--panels', 'b.csv'], '--panels needs --sheets'],
    [['cut', 'a.yaml', '--kerf', '3'], '--kerf goes with --panels'],
    [['cut', 'a.yaml', '--seed', '-1'], 'whole number'],
    [['cut', 'a.yaml', '--time', '0'], 'above 0'],
    [['cut', '--panels', 'a', '--sheets', 'b', '--kerf', '-1'], 'from 0 to 50 mm'],
    [['cut', '--panels', 'a', '--sheets', 'b', '--kerf', 'thin'], 'a length in mm'],
    [['cut', 'a.yaml', '--outt', 'x'], 'Did you mean --out?'],
    [['list', 'colours'], 'Allowed choices'],
    [['replay'], "missing required argument 'FILE'"],
  ])('ends with code 2 and says how it is used: %j', async (args, words) => {
    const run = await plywrightAlone(temporaryFolder(), args);
    expect(run.code).toBe(2);
    expect(run.stdout).toBe('');
    expect(run.stderr).toContain(words);
    expect(run.stderr).toContain('--help');
  });
});

describe('NO_COLOR and output that is no terminal', () => {
  it('get no colours', async () => {
    for (const environment of [{}, { NO_COLOR: '1' }, { FORCE_COLOR: '1', NO_COLOR: '1' }]) {
      const run = await plywrightAlone(temporaryFolder(), ['cut', 'none.yaml'], environment);
      expect(run.stderr).not.toContain('\u001b');
    }
  });
});

describe('the package', () => {
  it('holds what it needs and starts through a link, as npx starts it', async () => {
    const folder = temporaryFolder();
    const packed = execFileSync(
      'npm',
      ['pack', '--silent', '--ignore-scripts', '--pack-destination', folder],
      {
        cwd: projectFolder,
        encoding: 'utf8',
      },
    ).trim();
    execFileSync('tar', ['-xzf', packed.split('\n').at(-1)!], { cwd: folder });
    const installed = join(folder, 'node_modules/plywright');
    mkdirSync(join(folder, 'node_modules/.bin'), { recursive: true });
    execFileSync('mv', [join(folder, 'package'), installed]);
    symlinkSync(join(projectFolder, 'node_modules'), join(installed, 'node_modules'));
    symlinkSync('../plywright/cli/bin/plywright.js', join(folder, 'node_modules/.bin/plywright'));
    const run = (...args: string[]) =>
      execFileSync(join(folder, 'node_modules/.bin/plywright'), args, { cwd: folder, encoding: 'utf8' });
    const { version } = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8'));
    expect(run('--version').trim()).toBe(version);
    expect(run('list', 'boards')).toContain('poplar');
    expect(run('cut', 'node_modules/plywright/parts-libraries/demo-van/orders/demo-short.yaml')).toContain(
      'Papers in out/demo-short/',
    );
  });
});
