import {
  type ComparedRow,
  type Comparison,
  describeFigure,
  rowInWords,
} from '../../src/pipeline/compareDesigns.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

const WIDEST_COLUMN = 17;
const NARROWEST_COLUMN = 9;

/** Breaks a name at strokes, commas, points and spaces into lines of a column's width; longer words are cut. */
function headLines(name: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const part of printable(name).split(/(?<=[-,/. =])/)) {
    if (line !== '' && (line + part).trimEnd().length > width) {
      lines.push(line.trimEnd());
      line = '';
    }
    line += part;
    while (line.trimEnd().length > width) {
      lines.push(line.slice(0, width));
      line = line.slice(width);
    }
  }
  return [...lines, line.trimEnd()].filter((each) => each !== '');
}

function cellOf(row: ComparedRow, index: number): string {
  const value = row.values[index] ?? null;
  const text = describeFigure(row.figure, value, '');
  const least = row.least?.[index] ?? value;
  return `${text}${least === value ? '' : ` (${least})`}${row.best.includes(index) ? ' *' : '  '}`;
}

/** Columns that fit on a line, designs by their place. */
function blocksOf(widths: readonly number[], nameWidth: number): number[][] {
  const blocks: number[][] = [];
  let used = Number.POSITIVE_INFINITY;
  widths.forEach((width, index) => {
    if (used + width + 2 > TERMINAL_WIDTH) {
      blocks.push([]);
      used = nameWidth + 2;
    }
    blocks.at(-1)!.push(index);
    used += width + 2;
  });
  return blocks;
}

/** What the terminal says of designs side by side: as many columns as fit beside each other, in blocks below each other. */
export function describeComparison(comparison: Comparison, colours: ReturnType<typeof coloursFor>): string {
  const { designs, rows } = comparison;
  const names = rows.map(
    (row) => `${row.of === null ? '' : '  '}${rowInWords(row)}${row.differs ? '' : ' ='}`,
  );
  const nameWidth = Math.max(...names.map((name) => name.length));
  const cells = designs.map((_, index) => rows.map((row) => cellOf(row, index)));
  const heads = designs.map(({ name }) => headLines(name, WIDEST_COLUMN));
  const widths = cells.map((own, index) =>
    Math.max(
      NARROWEST_COLUMN,
      ...own.map(({ length }) => length),
      ...heads[index]!.map(({ length }) => length),
    ),
  );
  const blocks = blocksOf(widths, nameWidth).map((block) => {
    const lines = Math.max(...block.map((index) => heads[index]!.length));
    const head = [
      '',
      ...block.map((index) => `${heads[index]!.join('\n')}${'\n'.repeat(lines - heads[index]!.length)}`),
    ];
    const body = rows.map((row, at) => {
      const line = [names[at]!, ...block.map((index) => cells[index]![at]!)];
      return row.differs ? line : line.map((cell) => colours.dim(cell));
    });
    return plainTable(head, body, `l${'r'.repeat(block.length)}`);
  });
  const currencies = [...new Set(designs.map(({ currency }) => currency))].filter((each) => each !== '');
  const notes = [
    `* best of its row; = equal in all designs; in brackets the least there can be, where it is less${currencies.length === 0 ? '' : `; money in ${currencies.join(', ')}`}`,
    ...designs
      .filter(({ pricedBy }) => pricedBy === 'material')
      .slice(0, 1)
      .map(() => 'without rates in a library only its material is charged'),
  ];
  return `${blocks.join('\n\n')}\n\n${notes.map((note) => wrap(note, TERMINAL_WIDTH)).join('\n')}\n`;
}
