import type { Command } from 'commander';

/** A command as the program's help lists it, and how the rest of it is added. */
export interface CommandEntry {
  readonly name: string;
  /** What follows the name in that list. */
  readonly takes: string;
  readonly summary: string;
  readonly load: () => Promise<(program: Command) => void>;
}

/** All commands in the order of the help. What each is made of is loaded only when it is called. */
export const COMMANDS: readonly CommandEntry[] = [
  {
    name: 'cut',
    takes: '[options] [ORDER...]',
    summary: 'write the papers to saw an order or a list from',
    load: async () => (await import('./cut.ts')).addCutCommand,
  },
  {
    name: 'panels',
    takes: '[options] <ORDER>',
    summary: 'print the panels of an order, with their sizes',
    load: async () => (await import('./panels.ts')).addPanelsCommand,
  },
  {
    name: 'check',
    takes: '[options] <ORDER|LIBRARY>',
    summary: 'say everything that is wrong with an order or a library',
    load: async () => (await import('./check.ts')).addCheckCommand,
  },
  {
    name: 'draw',
    takes: '[options] [ORDER]',
    summary: 'draw the furniture of an order, or one unit',
    load: async () => (await import('./draw.ts')).addDrawCommand,
  },
  {
    name: 'quote',
    takes: '[options] <ORDER...>',
    summary: 'estimate the price of an order, line by line',
    load: async () => (await import('./quote.ts')).addQuoteCommand,
  },
  {
    name: 'diff',
    takes: '[options] <OLD> [NEW]',
    summary: 'tell what a changed order means',
    load: async () => (await import('./diff.ts')).addDiffCommand,
  },
  {
    name: 'compare',
    takes: '[options] [ORDER...]',
    summary: 'set designs side by side: sheets, price, mass, work',
    load: async () => (await import('./compare.ts')).addCompareCommand,
  },
  {
    name: 'sweep',
    takes: '[options] <ORDER>',
    summary: 'try an order over a range of sizes',
    load: async () => (await import('./sweep.ts')).addSweepCommand,
  },
  {
    name: 'advise',
    takes: '[options] <ORDER>',
    summary: 'find small changes of an order that save sheets',
    load: async () => (await import('./advise.ts')).addAdviseCommand,
  },
  {
    name: 'replay',
    takes: '[options] <FILE>',
    summary: 'saw a plan file again in simulation, and say whether it is right',
    load: async () => (await import('./replay.ts')).addReplayCommand,
  },
  {
    name: 'recut',
    takes: '[options] <PLAN> [PANEL...]',
    summary: 'cut spoiled panels anew',
    load: async () => (await import('./recut.ts')).addRecutCommand,
  },
  {
    name: 'list',
    takes: '[options] [KIND]',
    summary: 'print what a library holds',
    load: async () => (await import('./list.ts')).addListCommand,
  },
  {
    name: 'buy',
    takes: '[options] <ORDER...>',
    summary: 'work out what to order for one or several orders',
    load: async () => (await import('./buy.ts')).addBuyCommand,
  },
  {
    name: 'stock',
    takes: '',
    summary: 'keep the store: what is there, on order, comes in, goes out',
    load: async () => (await import('./stock.ts')).addStockCommand,
  },
  {
    name: 'year',
    takes: '[options] <MIX>',
    summary: 'simulate a year of orders: sheets, yield, offcuts',
    load: async () => (await import('./year.ts')).addYearCommand,
  },
];
