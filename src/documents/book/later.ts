import type { Block, Row, Section } from './book.ts';
import { columnsOf } from './columns.ts';
import { type BookFacts, sizeText } from './subject.ts';

/** The spoiled panels that this plan cuts anew, and why; nothing in any other plan. */
export function spoiledChapter({ plan, panels, words }: BookFacts): Section[] {
  const { recut } = plan;
  if (recut === undefined) return [];
  const says = words.later.spoiled;
  const codes = [...recut.spoiled];
  const rows = panels.flatMap(({ number, panel }) =>
    (panel.label?.pieces ?? []).map((piece): Row => {
      const code = codes.find((one) => one.endsWith(`/${number}/${piece}`)) ?? '';
      const which = says.piece(piece, panel.label?.of ?? panel.count);
      return { cells: [String(number), panel.name, panel.unit, which, code] };
    }),
  );
  const blocks: Block[] = [
    { kind: 'paragraph', text: says.intro },
    ...(recut.why === ''
      ? []
      : [{ kind: 'paragraph' as const, text: says.why(recut.why), strong: true as const }]),
    {
      kind: 'table',
      caption: says.heading,
      columns: columnsOf(says.columns, [-1.2, 2.9, 2.9, 2.4, 8.6]),
      rows,
    },
  ];
  return [{ id: 'spoiled', heading: says.heading, level: 2, startsPage: false, blocks }];
}

/** What earlier plans of the order have sawn, and what becomes of it; nothing in a first plan. */
export function sawnChapter({ plan, words, units }: BookFacts): Section[] {
  const { sawn } = plan;
  if (sawn === undefined) return [];
  const says = words.later.sawn;
  const rows = sawn.groups.flatMap((group) =>
    group.panels.map((panel): Row => {
      const differs = panel.differs.map((one) => says.differs[one]).join(', ');
      const { number } = panel.label;
      return {
        cells: [String(number), panel.name, panel.unit, String(panel.count), panel.codes.join(' '), differs],
      };
    }),
  );
  const left = sawn.groups.flatMap((group) =>
    group.left.map((piece): Row => {
      const goes = piece.kept ? says.kept : says.waste;
      return {
        cells: [piece.code, piece.name, piece.unit, sizeText(piece.length, piece.width, units), goes],
      };
    }),
  );
  const sheets = sawn.sheets.map(({ group, number, copies }) =>
    copies.length === 1 ? `${group} ${number}` : `${group} ${number} × ${copies.length}`,
  );
  const blocks: Block[] =
    rows.length === 0
      ? [{ kind: 'paragraph', text: says.none }]
      : [
          { kind: 'paragraph', text: says.intro(sheets) },
          { kind: 'paragraph', text: says.rest },
          {
            kind: 'table',
            caption: says.heading,
            columns: columnsOf(says.columns, [-1.2, 2.9, 2.8, -1.5, 8.6, 2.6]),
            rows: rows.sort((a, b) => Number(a.cells[0]) - Number(b.cells[0])),
          },
        ];
  if (left.length > 0) {
    blocks.push(
      { kind: 'paragraph', text: says.leftIntro, strong: true },
      {
        kind: 'table',
        caption: says.left,
        columns: columnsOf(says.leftColumns, [8.4, 2.8, 2.8, 2.9, 1.7]),
        rows: left,
      },
    );
  }
  return [{ id: 'sawn', heading: says.heading, level: 2, startsPage: true, blocks }];
}
