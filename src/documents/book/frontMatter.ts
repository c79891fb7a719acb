import { guidesOf } from '../../basics/cutGuide.ts';
import { isRoom } from '../../basics/vehicleSection.ts';
import { listMoney } from '../figures.ts';
import type { Block, Row, Section } from './book.ts';
import { columnsOf } from './columns.ts';
import type { BookFacts } from './subject.ts';

function aboutOrder({ ordered, words, title }: BookFacts): Block[] {
  if (ordered === undefined) return [];
  const { order, library, furniture } = ordered;
  const vehicle = library.vehicles.get(order.vehicle);
  const place = vehicle !== undefined && isRoom(vehicle) ? words.title.room : words.title.vehicle;
  const said = [
    order.note === '' ? null : `${words.title.note}: ${order.note}`,
    `${place}: ${vehicle?.title ?? order.vehicle}`,
    `${words.title.saw}: ${library.saws.get(order.saw)?.name ?? order.saw}`,
    `${words.title.count}: ${order.count}`,
    `${words.title.units}: ${furniture.units.map((unit) => unit.name).join(', ')}`,
  ];
  const roles = [...order.roles].map(([role, choice]) => ({
    cells: [
      role,
      title(choice.board),
      title(choice.finish),
      choice.edging === null ? words.title.raw : title(choice.edging),
    ],
  }));
  return [
    { kind: 'list', items: said.filter((line) => line !== null) },
    {
      kind: 'table',
      caption: words.title.roles,
      columns: columnsOf(words.title.rolesColumns, [1.6, 5.6, 2.4, 3.4]),
      rows: roles,
    },
  ];
}

function totals({ plan, summaries, words, groupWords }: BookFacts): Block {
  const money = (minor: number | null) => (minor === null ? '–' : `${listMoney(minor)} ${plan.currency}`);
  const rows: Row[] = summaries.map((summary, index) => ({
    cells: [
      groupWords(plan.groups[index]!),
      String(summary.panels),
      String(summary.sheetCount),
      `${(summary.yield * 100).toFixed(1)} %`,
      words.title.metres(summary.sawnMetres.toFixed(1)),
      money(summary.cost),
    ],
  }));
  const sum = (of: (one: (typeof summaries)[number]) => number) =>
    summaries.reduce((total, one) => total + of(one), 0);
  const allPriced = summaries.every((one) => one.cost !== null);
  rows.push({
    cells: [
      words.title.all,
      String(sum((one) => one.panels)),
      String(sum((one) => one.sheetCount)),
      '',
      words.title.metres(sum((one) => one.sawnMetres).toFixed(1)),
      money(allPriced ? sum((one) => one.cost ?? 0) : null),
    ],
  });
  return {
    kind: 'table',
    caption: words.title.totals,
    columns: columnsOf(words.title.totalsColumns, [9, -1.6, -1.6, -2.2, -2, -2.7]),
    rows,
    sum: true,
  };
}

/** What a sawyer wants to know beforehand, a line per stock group. */
function sawing({ plan, summaries, words: { title }, groupWords }: BookFacts): Block {
  const rows: Row[] = summaries.map((summary, index) => {
    const { sawings, heaviest } = summary;
    return {
      cells: [
        groupWords(plan.groups[index]!),
        String(summary.differentSheets),
        String(sawings.count),
        String(sawings.cuts),
        title.metres(sawings.sawnMetres.toFixed(1)),
        String(sawings.fenceSettings),
        String(summary.turns),
        heaviest.massKg === null
          ? title.squareMetres(heaviest.areaM2.toFixed(2))
          : title.kilograms(heaviest.massKg.toFixed(1)),
      ],
    };
  });
  return {
    kind: 'table',
    caption: title.sawing,
    columns: columnsOf(
      title.sawingColumns(guidesOf(plan.groups)),
      [8.6, -1.6, -1.5, -1.3, -1.6, -1.4, -1.3, -2],
    ),
    rows,
  };
}

/** What was ordered, in which boards, and what it comes to. */
export function titleChapter(facts: BookFacts): Section {
  const { words } = facts;
  return {
    id: 'order',
    heading: words.title.heading,
    level: 2,
    startsPage: false,
    blocks: [
      { kind: 'paragraph', text: words.workshopLine },
      ...aboutOrder(facts),
      totals(facts),
      sawing(facts),
    ],
  };
}

/** What to look at before the job leaves the workshop. */
export function lastChecks({ words }: BookFacts): Section {
  return {
    id: 'last',
    heading: words.last.heading,
    level: 2,
    startsPage: false,
    blocks: [
      { kind: 'ticks', items: words.last.items.map((text, index) => ({ key: `last/${index + 1}`, text })) },
      { kind: 'paragraph', text: words.workshopLine },
    ],
  };
}
