import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const read = (file: string) => readFileSync(join(root, file), 'utf8');

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly hasInstallScript?: boolean;
}

const locked = Object.entries(
  (JSON.parse(read('package-lock.json')) as { packages: Record<string, Locked> }).packages,
).filter(([path]) => path !== '');
const about = JSON.parse(read('package.json')) as {
  readonly dependencies: Record<string, string>;
  readonly devDependencies: Record<string, string>;
};
const nameOf = (path: string) => path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);

/** Licences that ask for no more than to be named, by their SPDX identifiers (spdx.org/licenses). */
const permissive = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BSL-1.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MIT-0',
  'MIT OR Apache-2.0',
  'PSF-2.0',
  'Unlicense',
]);

/** Packages that name no such licence in their package.json, each with what its own licence file says. */
const looked: Readonly<Record<string, RegExp>> = {
  'png-js': /MIT License[\s\S]*Permission is hereby granted, free of charge/,
  'dejavu-fonts-ttf': /Bitstream Vera[\s\S]*Permission is hereby granted, free of charge/,
};

/** What only tests and their tools use and is not handed on may be under a licence that binds changes of its own files, or data. */
const developmentOnly = /^(?:MPL-2\.0|CC-BY-4\.0)$/;

describe('packages', () => {
  it('are under permissive licences', () => {
    for (const [path, { license, dev }] of locked) {
      const name = nameOf(path);
      if (Object.hasOwn(looked, name)) {
        const file = ['LICENSE', 'LICENSE.md'].map((each) => join(root, path, each)).find(existsSync)!;
        expect(readFileSync(file, 'utf8'), name).toMatch(looked[name]!);
        continue;
      }
      const fine = permissive.has(license ?? '') || (dev === true && developmentOnly.test(license ?? ''));
      expect(fine, `${name}: ${license}`).toBe(true);
    }
  });

  it('say the same of their licences where they are installed as in the lock file', () => {
    for (const [path, { license }] of locked) {
      const file = join(root, path, 'package.json');
      if (!existsSync(file)) continue;
      const installed = JSON.parse(readFileSync(file, 'utf8')) as { license?: string };
      expect(installed.license, path).toBe(license);
    }
  });

  it('need no install script, but for the one that is named', () => {
    const scripted = locked.filter(([, { hasInstallScript }]) => hasInstallScript);
    expect(scripted.map(([path, { dev }]) => [nameOf(path), dev])).toEqual([['esbuild', true]]);
    expect(read('DEVELOPERS.md')).toMatch(/`esbuild`[^.]*install script/);
  });

  it('are exact versions, each with a fingerprint of its bytes', () => {
    for (const version of Object.values({ ...about.dependencies, ...about.devDependencies })) {
      expect(version).toMatch(/^\d+\.\d+\.\d+$/);
    }
    for (const [path, { integrity, resolved }] of locked) {
      expect(integrity, path).toMatch(/^sha512-/);
      expect(resolved ?? 'https://registry.npmjs.org/', path).toMatch(/^https:\/\/registry\.npmjs\.org\//);
    }
  });

  it('each have a reason in DEVELOPERS.md', () => {
    const told = new Set(
      [...read('DEVELOPERS.md').matchAll(/^\| (`[^|]*`) \|/gm)].flatMap((row) =>
        [...row[1]!.matchAll(/`([^`]+)`/g)].map((name) => name[1]!),
      ),
    );
    for (const name of Object.keys({ ...about.dependencies, ...about.devDependencies }))
      expect([...told]).toContain(name);
  });
});

describe('readers', () => {
  it('unpack nothing, so that no small file can become a large one', () => {
    const sources = ['src', 'cli'].flatMap((folder) =>
      readdirSync(join(root, folder), { recursive: true }).map((file) => `${folder}/${String(file)}`),
    );
    const unpacking =
      /from '(?:node:)?zlib'|import\('(?:node:)?zlib'\)|(?:gun|un)zip|inflate|DecompressionStream/i;
    const found = sources.filter((file) => file.endsWith('.ts') && unpacking.test(read(file)));
    expect(sources.length).toBeGreaterThan(200);
    expect(found).toEqual([]);
  });
});

describe('the package', () => {
  it('holds the command, its libraries and schemas, and nothing of the tests', () => {
    const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
    const listed = execFileSync(npm, ['pack', '--dry-run', '--ignore-scripts', '--json'], {
      cwd: root,
      encoding: 'utf8',
    });
    const [packed] = Object.values(JSON.parse(listed) as Record<string, { files: { path: string }[] }>);
    const paths = packed!.files.map(({ path }) => path);
    for (const path of paths) {
      expect(path).toMatch(
        /^(?:dist\/(?:cli|src)\/.+\.js|dist\/cli\/help\.txt|(?:parts-libraries|schemas)\/.+|cli\/bin\/plywright\.js|package\.json|README\.md|LICENSE)$/,
      );
    }
    expect(paths).toContain('parts-libraries/demo-van/library.yaml');
    expect(paths).toContain('schemas/plan.schema.json');
  });
});
