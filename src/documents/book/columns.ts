import type { Column } from './book.ts';

/** Columns of a table from their headings: how wide each is beside the others; a minus sets figures to the right. */
export function columnsOf(headings: readonly string[], weights: readonly number[]): Column[] {
  if (headings.length !== weights.length) {
    throw new Error(`${headings.length} headings for ${weights.length} columns: ${headings.join(', ')}`);
  }
  return headings.map((heading, index) => {
    const weight = weights[index]!;
    return weight < 0 ? { heading, weight: -weight, anchor: 'end' } : { heading, weight };
  });
}
