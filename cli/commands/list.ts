import { Argument, type Command } from 'commander';

/** What of a library can be listed. */
export const listKinds = [
  'library',
  'boards',
  'finishes',
  'edgings',
  'fittings',
  'sheets',
  'suppliers',
  'saws',
  'vehicles',
  'units',
  'layouts',
  'roles',
] as const;

export type ListKind = (typeof listKinds)[number];

/** What `plywright list` was asked for. */
export interface ListOptions {
  readonly json?: true;
  readonly library?: string;
}

const more = `
Without --library it lists every library under parts-libraries/, one after
another; with --json several are in a list called libraries.

Examples:
  plywright list
  plywright list units
  plywright list layouts --library parts-libraries/demo-van --json

Exit codes: as in 'plywright --help'.
`;

/** Adds `plywright list`. */
export function addListCommand(program: Command): void {
  program
    .command('list')
    .description('Prints what a library holds: boards, finishes, units with their parameters, and so on.')
    .addArgument(new Argument('[KIND]', 'what to list').choices(listKinds).default('library'))
    .option('--json', 'as one JSON document')
    .option('--library <DIR>', 'library folder, or name of one under parts-libraries/')
    .addHelpText('after', more)
    .action(async (kind: ListKind, options: ListOptions) => {
      const { printList } = await import('../printing/list.ts');
      await printList(kind, options);
    });
}
