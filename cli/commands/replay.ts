import type { Command } from 'commander';

/** What `plywright replay` was asked for. */
export interface ReplayOptions {
  readonly json?: true;
}

const more = `
The plan is sawn again in simulation, by code that shares nothing with the
search: every cut right across the piece in hand, kerf and trim taken off, every
panel once and of the right size, grain the right way, and pieces and dust
adding up to the sheet. So are the rules of the saw (first cut, turns, longest
cut, narrowest strip, height of a stack of equal sheets), and the bound.

Examples:
  plywright replay out/demo-long/plan.json

Exit codes: 0 when the plan can be sawn, 3 when it cannot; others as in
'plywright --help'.
`;

/** Adds `plywright replay`. */
export function addReplayCommand(program: Command): void {
  program
    .command('replay')
    .description('Reads a plan file and saws it in simulation.')
    .argument('<FILE>', 'plan file (plan.json)')
    .option('--json', 'as one JSON document')
    .addHelpText('after', more)
    .action(async (path: string, options: ReplayOptions) => {
      const { replayFile } = await import('../printing/replay.ts');
      await replayFile(path, options);
    });
}
