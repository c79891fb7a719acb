import { extentSize } from '../../basics/boxes.ts';
import { printLength } from '../../drawing/lengthsInWords.ts';
import { applianceNeeds } from '../appliancesList.ts';
import type { Section } from './book.ts';
import { columnsOf } from './columns.ts';
import type { BookFacts } from './subject.ts';

/** The appliances that the furniture of the order has room for; nothing where there are none. */
export function appliancesChapter({ ordered, words, units: printed }: BookFacts): Section[] {
  if (ordered === undefined) return [];
  const needs = applianceNeeds(ordered.furniture);
  if (needs.length === 0) return [];
  const says = words.appliances;
  const rows = needs.map(({ held, count, units }) => ({
    tick: `appliances/${held.appliance}`,
    cells: [
      held.title,
      String(count),
      (['x', 'y', 'z'] as const).map((axis) => printLength(extentSize(held.body[axis]), printed)).join(' × '),
      held.massKg === null ? '' : held.massKg.toFixed(1),
      units.map((use) => (use.count === 1 ? use.unit : words.fittings.unit(use.unit, use.count))).join('; '),
      '',
    ],
  }));
  return [
    {
      id: 'appliances',
      heading: says.heading,
      level: 2,
      startsPage: false,
      blocks: [
        { kind: 'paragraph', text: says.intro },
        {
          kind: 'table',
          caption: says.heading,
          columns: columnsOf(says.columns, [6, -1.4, 4, -2, 6, 1.6]),
          rows,
        },
      ],
    },
  ];
}
