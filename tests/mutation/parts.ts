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
    tests: ['tests/replay/wrongPlans.test.ts', 'tests/replay/everyRule.test.ts'],
  },
  {
    name: 'ledger',
    files: ['src/store/*.ts'],
    tests: ['tests/store/book.test.ts', 'tests/store/ledgerText.test.ts'],
  },
  {
    name: 'cut-sizes',
    files: ['src/panels/sizePanel.ts', 'src/panels/materials.ts', 'src/panels/orientPanel.ts'],
    tests: ['tests/panels/makePanels.test.ts', 'tests/outside/panelSizes.test.ts'],
  },
  {
    name: 'panels',
    files: [
      'src/panels/*.ts',
      '!src/panels/sizePanel.ts',
      '!src/panels/materials.ts',
      '!src/panels/orientPanel.ts',
    ],
    tests: ['tests/panels/*.test.ts'],
  },
  { name: 'units', files: ['src/units/*.ts'], tests: ['tests/units/*.test.ts'] },
  { name: 'bounds', files: ['src/bounds/*.ts'], tests: ['tests/bounds/*.test.ts'] },
];
