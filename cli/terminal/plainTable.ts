import Table from 'cli-table3';

const sides = [
  'top',
  'top-mid',
  'top-left',
  'top-right',
  'bottom',
  'bottom-mid',
  'bottom-left',
  'bottom-right',
  'left',
  'left-mid',
  'mid',
  'mid-mid',
  'right',
  'right-mid',
  'middle',
];
const noLines = Object.fromEntries(sides.map((side) => [side, '']));

/** A table without lines, its columns two spaces apart; `aligns` has an `l` or `r` per column. */
export function plainTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  aligns: string,
): string {
  const table = new Table({
    head: [...head],
    chars: noLines,
    style: { 'padding-left': 0, 'padding-right': 2, head: [], border: [] },
    colAligns: [...aligns].map((letter) => (letter === 'r' ? 'right' : 'left')),
  });
  for (const row of rows) table.push([...row]);
  return table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}
