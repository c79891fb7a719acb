import { fittingNeeds } from '../fittingsList.ts';
import type { Section } from './book.ts';
import { columnsOf } from './columns.ts';
import type { BookFacts } from './subject.ts';

/** All fittings of the order with the units that take them; nothing where there are none. */
export function fittingsChapter({ ordered, words }: BookFacts): Section[] {
  if (ordered === undefined) return [];
  const { furniture, library } = ordered;
  const needs = fittingNeeds(furniture, library);
  if (needs.length === 0) return [];
  const says = words.fittings;
  const rows = needs.map(({ fitting, count, packs, units }) => {
    const { title, pack } = library.fittings.get(fitting)!;
    return {
      tick: `fittings/${fitting}`,
      cells: [
        title,
        String(count),
        says.packs(packs, pack),
        units.map((use) => says.unit(use.unit, use.count)).join('; '),
        '',
      ],
    };
  });
  return [
    {
      id: 'fittings',
      heading: says.heading,
      level: 2,
      startsPage: true,
      blocks: [
        { kind: 'paragraph', text: says.intro(furniture.count) },
        {
          kind: 'table',
          caption: says.heading,
          columns: columnsOf(says.columns, [5, -1.4, 2, 7, 1.6]),
          rows,
        },
      ],
    },
  ];
}
