import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import about from '../package.json' with { type: 'json' };

const root = resolve(import.meta.dirname, '..');

/** Folders of `src/` that are not stages, with how far down the line they stand. */
const layers: Readonly<Record<string, number>> = { model: 0, basics: 1, pipeline: 3, edge: 4 };
const STAGE_LAYER = 2;
/** A stage never imports a stage, but for these. */
const stageExceptions = new Set(['documents → drawing']);
/** What `cli/` may lean on; the stages are reached through the pipeline. */
const openToTheCommand = new Set(['model', 'basics', 'pipeline', 'edge']);
/** Where results must be the same on every machine: ECMAScript leaves the last bit of these open. */
const deterministic = ['nesting', 'bounds', 'covering', 'basics', 'demands', 'cutPlans', 'replay'];

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

/** The code with comments and the inside of texts taken out (`keepTexts`: comments only), line breaks kept. */
function bare(code: string, texts: 'keep texts' | 'drop texts'): string {
  const token = /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"|`(?:\\.|[^`\\])*`/g;
  return code.replace(token, (found) => {
    if (found.startsWith('/')) return ' ';
    if (texts === 'keep texts') return found;
    // What stands inside ${} of a template is code and stays.
    const inserted = found.startsWith('`') ? [...found.matchAll(/\$\{([^}]*)\}/g)].map((m) => m[1]) : [];
    return `'' ${inserted.join(' ')}`;
  });
}

function importsOf(code: string): string[] {
  const found = bare(code, 'keep texts').matchAll(
    /(?:\bfrom\s*|\bimport\s*\(\s*|\bimport\s+|\brequire\s*\(\s*)(['"])([@.\w][^'"\n]*)\1/g,
  );
  return [...found].map((match) => match[2]!);
}

/** `src/nesting/x.ts` → `nesting`; `src/pipeline.ts` → `pipeline`. */
function partOf(path: string): string {
  return path.split('/')[1]!.replace(/\.ts$/, '');
}

function layerOf(part: string): number {
  return layers[part] ?? STAGE_LAYER;
}

/** Says what is wrong with one import of a file in `src/`; null when nothing is. */
function wrongImport(file: string, wanted: string): string | null {
  const say = (why: string) => `${file} imports ${wanted}: ${why}`;
  if (!wanted.startsWith('.')) {
    const name = wanted
      .split('/')
      .slice(0, wanted.startsWith('@') ? 2 : 1)
      .join('/');
    if (wanted.startsWith('node:') || builtinModules.includes(name)) return say('src/ is free of Node');
    return name in about.dependencies ? null : say('it is not among the dependencies');
  }
  const target = relative(root, resolve(root, dirname(file), wanted)).replaceAll('\\', '/');
  if (!target.startsWith('src/')) return say('src/ imports nothing outside itself');
  if (!/\.(ts|json)$/.test(target)) return say('the extension is missing');
  const [from, to] = [partOf(file), partOf(target)];
  if (from === to) return null;
  if (from === 'replay' && to !== 'model' && to !== 'basics') return say('replay leans on nothing else');
  if (stageExceptions.has(`${from} → ${to}`)) return null;
  if (layerOf(to) >= layerOf(from)) return say(`${from} does not lean on ${to}`);
  return null;
}

describe('imports', () => {
  it('are read from every way of writing them', () => {
    const code = `
      import { a } from './a.ts';
      import type { b } from "../b.ts"; // from './comment.ts'
      export * from './c.ts';
      import './d.ts';
      const e = await import('./e.ts'); /* import './comment.ts' */
      import {
        f,
      } from './f.ts';
      const columns = { 'cut from': 'text', 'from': 'text' };
    `;
    expect(importsOf(code)).toEqual(['./a.ts', '../b.ts', './c.ts', './d.ts', './e.ts', './f.ts']);
  });

  it.each([
    ['src/nesting/x.ts', '../bounds/index.ts'],
    ['src/replay/index.ts', '../nesting/index.ts'],
    ['src/basics/x.ts', '../units/index.ts'],
    ['src/model/x.ts', '../basics/lengths.ts'],
    ['src/units/x.ts', '../pipeline.ts'],
    ['src/drawing/x.ts', '../documents/index.ts'],
    ['src/pipeline.ts', './edge/index.ts'],
    ['src/pipeline.ts', '../cli/main.ts'],
    ['src/nesting/x.ts', 'node:fs'],
    ['src/nesting/x.ts', 'fs/promises'],
    ['src/nesting/x.ts', 'left-out-of-the-package'],
    ['src/nesting/x.ts', './y.js'],
  ])('would be found wrong: %s → %s', (file, wanted) => {
    expect(wrongImport(file, wanted)).not.toBeNull();
  });

  it.each([
    ['src/documents/index.ts', '../drawing/index.ts'],
    ['src/nesting/index.ts', '../basics/random.ts'],
    ['src/pipeline.ts', './nesting/index.ts'],
    ['src/edge/index.ts', '../pipeline.ts'],
    ['src/model/plan.ts', 'zod'],
  ])('would be found right: %s → %s', (file, wanted) => {
    expect(wrongImport(file, wanted)).toBeNull();
  });

  it('in src/ follow the line', () => {
    const wrong = sources('src').flatMap((file) =>
      importsOf(readFileSync(join(root, file), 'utf8'))
        .map((wanted) => wrongImport(file, wanted))
        .filter((found) => found !== null),
    );
    expect(wrong).toEqual([]);
  });

  it('in cli/ reach the stages through the pipeline', () => {
    const wrong = sources('cli').flatMap((file) =>
      importsOf(readFileSync(join(root, file), 'utf8')).flatMap((wanted) => {
        if (!wanted.startsWith('.')) return [];
        const target = relative(root, resolve(root, dirname(file), wanted)).replaceAll('\\', '/');
        if (target.startsWith('cli/')) return [];
        return target.startsWith('src/') && openToTheCommand.has(partOf(target))
          ? []
          : [`${file} imports ${wanted}`];
      }),
    );
    expect(wrong).toEqual([]);
  });
});

/** Lines of `src/` code, comments and texts apart, in which a pattern stands. */
function linesWith(pattern: RegExp, parts?: readonly string[]): string[] {
  return sources('src')
    .filter((file) => parts === undefined || parts.includes(partOf(file)))
    .flatMap((file) =>
      bare(readFileSync(join(root, file), 'utf8'), 'drop texts')
        .split('\n')
        .filter((line) => pattern.test(line))
        .map((line) => `${file}: ${line.trim()}`),
    );
}

describe('code in src/', () => {
  it('asks no clock and takes no random number that has no seed', () => {
    expect(linesWith(/\bDate\b|\bperformance\b|\bMath\.random\b|\bcrypto\b/)).toEqual([]);
  });

  it('knows no terminal, process or page', () => {
    expect(linesWith(/\bconsole\.|\bprocess\.|\bsetTimeout\b|\bfetch\(/)).toEqual([]);
  });

  it('runs no code from a file', () => {
    expect(linesWith(/\beval\s*\(|\bnew Function\b/)).toEqual([]);
  });

  it('uses no arithmetic whose last bit may differ between machines where results must be the same', () => {
    const inexact =
      /\*\*|\bMath\.(?:pow|exp|expm1|log|log2|log10|log1p|sin|cos|tan|asin|acos|atan|atan2|sinh|cosh|tanh|cbrt|hypot)\b/;
    expect(linesWith(inexact, deterministic)).toEqual([]);
  });

  it('keeps files short enough to read at one sitting', () => {
    const long = sources('src')
      .map((file) => ({ file, lines: readFileSync(join(root, file), 'utf8').split('\n').length }))
      .filter(({ lines }) => lines > 600);
    expect(long).toEqual([]);
  });
});
