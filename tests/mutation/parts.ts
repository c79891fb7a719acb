import { readdirSync } from 'node:fs';
import { basename, dirname } from 'node:path';

/** A part of the program whose mutants are tried, and the tests near it that must catch them. */
export interface MutatedPart {
  readonly name: string;
  /** Files that are changed. */
  readonly files: readonly string[];
  /** Tests that are run; quick ones, since each mutant runs those that reach it. */
  readonly tests: readonly string[];
}

export const parts: readonly MutatedPart[] = [
  {
    name: 'replay',
    files: ['src/replay/*.ts'],
    tests: [
      'tests/replay/*s.test.ts',
      'tests/replay/every*.test.ts',
      '!tests/replay/nestedLists.test.ts',
      '!tests/replay/randomNests.test.ts',
    ],
  },
  {
    name: 'ledger',
    files: ['src/store/*.ts', '!src/store/jsonSchema.ts'],
    tests: [
      'tests/store/*.test.ts',
      '!tests/store/jsonSchema.test.ts',
      '!tests/store/laterPlans.test.ts',
      '!tests/store/planHistories.test.ts',
    ],
  },
  {
    name: 'cut-sizes',
    files: ['src/panels/sizePanel.ts', 'src/panels/materials.ts', 'src/panels/orientPanel.ts'],
    tests: ['tests/panels/*.test.ts', 'tests/outside/panelSizes.test.ts'],
  },
  {
    name: 'panels',
    files: [
      'src/panels/*.ts',
      '!src/panels/sizePanel.ts',
      '!src/panels/materials.ts',
      '!src/panels/orientPanel.ts',
    ],
    tests: [
      'tests/panels/*.test.ts',
      'tests/checks/drilling.test.ts',
      'tests/checks/fit.test.ts',
      'tests/outside/panelSizes.test.ts',
    ],
  },
  {
    name: 'units',
    files: ['src/units/*.ts'],
    tests: ['tests/units/*.test.ts'],
  },
  {
    name: 'bounds',
    files: ['src/bounds/*.ts'],
    tests: [
      'tests/bounds/everyCertificate.test.ts',
      'tests/bounds/everyPair.test.ts',
      'tests/bounds/everyStep.test.ts',
    ],
  },
];

/** The part that PLYWRIGHT_MUTATED names. */
export function mutatedPart(): MutatedPart {
  const part = parts.find(({ name }) => name === process.env['PLYWRIGHT_MUTATED']);
  if (part === undefined) throw new Error('PLYWRIGHT_MUTATED names no part');
  return part;
}

/** The files of patterns: a star stands for any text of a file name, and a pattern after `!` leaves files out. */
export function filesOf(patterns: readonly string[]): string[] {
  const files = new Set<string>();
  for (const pattern of patterns) {
    const out = pattern.startsWith('!');
    const path = out ? pattern.slice(1) : pattern;
    const [before = '', after] = basename(path).split('*');
    const found =
      after === undefined
        ? [path]
        : readdirSync(dirname(path))
            .filter((name) => name.startsWith(before) && name.endsWith(after))
            .map((name) => `${dirname(path)}/${name}`);
    for (const file of found) {
      if (out) files.delete(file);
      else files.add(file);
    }
  }
  return [...files].sort();
}
