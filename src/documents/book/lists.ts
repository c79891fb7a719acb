import { axisFaces } from '../../basics/boxes.ts';
import { panelOnBench } from '../../basics/panelOnBench.ts';
import { printLength, type Units } from '../../drawing/lengthsInWords.ts';
import { type EdgeName, edgesInWorkingOrder, edgingNeeds } from '../edgingList.ts';
import { listMetresUp } from '../figures.ts';
import { keptPieces } from '../offcutsKept.ts';
import { codesOfOffcuts } from '../panelStickerPieces.ts';
import type { EdgeWord } from '../words/words.ts';
import type { Block, Row, Section } from './book.ts';
import { columnsOf } from './columns.ts';
import { type BookFacts, panelText, sawnSizeText, sizeText } from './subject.ts';

/** How far inches hold; nothing for mm. */
function inchNote(says: BookFacts['words']['cuttingList'], units: Units): string[] {
  switch (units) {
    case 'mm':
      return [];
    case 'inches':
      return [says.inches(64, '0.2')];
    case 'inches-32':
      return [says.inches(32, '0.4')];
    default:
      return units satisfies never;
  }
}

/** Every panel once, with how many of it are done. */
export function cuttingListChapter({ panels, words, title, plan, units }: BookFacts): Section {
  const says = words.cuttingList;
  const blocks: Block[] = [{ kind: 'paragraph', text: [says.intro, ...inchNote(says, units)].join(' ') }];
  for (const group of plan.groups) {
    const rows = panels
      .filter((entry) => entry.group === group)
      .map(({ number, panel }): Row => {
        const sheets = group.sheets.filter((sheet) =>
          sheet.pieces.some((piece) => piece.is === 'panel' && piece.panel === panel.id),
        );
        const cells = [
          String(number),
          panel.name,
          panel.unit,
          sawnSizeText(panel.length, panel.width, units),
          panel.grain === 'length' ? says.grain : says.none,
          String(panel.count),
          sizeText(panel.finishedLength, panel.finishedWidth, units),
          sheets.map((sheet) => String(sheet.number)).join(', '),
          says.doneOf(panel.count),
        ];
        return { cells, countsPanel: number };
      });
    blocks.push({
      kind: 'table',
      caption: [title(group.board), title(group.finish)].filter((word) => word !== '').join(', ') || group.id,
      columns: columnsOf(
        says.columns,
        units === 'mm' ? [-1.6, 4.5, 4, 3.4, 1.8, -2, 3.4, 1.8, 2] : [-1.6, 4, 4, 5.2, 1.8, -2, 5.2, 1.8, 2],
      ),
      rows,
    });
  }
  return { id: 'cutting-list', heading: says.heading, level: 2, startsPage: false, blocks };
}

const edgeWord = {
  'length 1': 'length1',
  'length 2': 'length2',
  'width 1': 'width1',
  'width 2': 'width2',
} as const satisfies Record<string, EdgeWord>;

/** On which side of its unit each edge of a panel is; a panel of a plain list has no sides. */
function sidesOfEdges({ ordered, words }: BookFacts): ReadonlyMap<string, Record<EdgeName, string>> {
  const { faces } = words.drawings.furniture;
  const panels = (ordered?.furniture.units ?? []).flatMap((unit) => unit.panels);
  return new Map(
    panels.map(({ id, lengthAxis, widthAxis }) => {
      const [length1, length2] = axisFaces[widthAxis];
      const [width1, width2] = axisFaces[lengthAxis];
      const sides = {
        'length 1': faces[length1],
        'length 2': faces[length2],
        'width 1': faces[width1],
        'width 2': faces[width2],
      };
      return [id, sides];
    }),
  );
}

function edgingRows(facts: BookFacts): Block[] {
  const { plan, words, title, ordered, units } = facts;
  const sides = sidesOfEdges(facts);
  const tables = new Map<string, { caption: string; rows: Map<string, Row> }>();
  for (const edge of edgesInWorkingOrder(plan).edges) {
    const key = `${edge.pass}/${edge.edging}`;
    const caption = words.edging.pass(edge.pass, title(edge.edging));
    const table = tables.get(key) ?? { caption, rows: new Map<string, Row>() };
    tables.set(key, table);
    const { number, panel } = edge.panel;
    const tick = `edging/${key}/${number}`;
    const before = table.rows.get(tick);
    const side = sides.get(panel.id)?.[edge.edge];
    const plain = words.edging.edge(edgeWord[edge.edge]);
    const name = side === undefined ? plain : words.edging.edgeOn(plain, side);
    const overlengthUm = ordered?.library.edgings.get(edge.edging)?.overlengthUm;
    table.rows.set(tick, {
      tick,
      cells: [
        String(number),
        panelText(panel),
        before === undefined ? name : `${before.cells[2]}, ${name}`,
        printLength(edge.lengthUm, units),
        overlengthUm === undefined ? '–' : printLength(edge.lengthUm + overlengthUm, units),
        String(panel.count),
        '',
      ],
    });
  }
  return [...tables.values()].map(({ caption, rows }) => ({
    kind: 'table',
    caption,
    columns: columnsOf(words.edging.columns, [-1.6, 6, 3.4, -2.6, -2.2, -2, 1.5]),
    rows: [...rows.values()],
  }));
}

/** Which edges get what, in working order, and what that takes. */
export function edgingChapter(facts: BookFacts): Section {
  const { plan, words, title, ordered, units } = facts;
  const says = words.edging;
  const needs = edgingNeeds(plan, ordered?.library.edgings ?? new Map());
  const blocks: Block[] =
    needs.length === 0
      ? [{ kind: 'paragraph', text: says.none }]
      : [
          { kind: 'paragraph', text: says.intro },
          {
            kind: 'table',
            caption: says.need,
            columns: columnsOf(says.needColumns, [5, -1.5, -2.2, -2.6, -3.4, -1.4]),
            rows: needs.map((need) => ({
              cells: [
                title(need.edging),
                String(need.strips),
                listMetresUp(need.netUm),
                need.overlengthUm === null ? '–' : printLength(need.overlengthUm, units),
                need.toBuyUm === null ? '–' : listMetresUp(need.toBuyUm),
                need.rolls === null ? '–' : String(need.rolls),
              ],
            })),
          },
          ...edgingRows(facts),
        ];
  return { id: 'edging', heading: says.heading, level: 2, startsPage: true, blocks };
}

/** Openings through panels, with distances as the drawings of the panels have them. */
export function cutOutChapter({ ordered, words, numberOf, isAbout, units }: BookFacts): Section {
  const says = words.cutOuts;
  const { faces } = words.drawings.furniture;
  const text = (um: number) => printLength(um, units);
  const rows = (ordered?.furniture.units ?? []).flatMap((unit) =>
    unit.panels.filter(isAbout).flatMap((panel) => {
      const number = numberOf(panel.id);
      const { cutOuts, sides, faceUp } = panelOnBench(panel, unit.panels, ordered!.library.edgings);
      return cutOuts.map(
        ({ name, left, near }): Row => ({
          tick: `cut-out/${number}/${name}`,
          cells: [
            String(number),
            panelText(panel),
            name,
            says.lies(faces[faceUp], faces[sides.left], faces[sides.near]),
            says.fromTo(text(left[0]), text(left[1])),
            says.fromTo(text(near[0]), text(near[1])),
            sizeText((left[1] - left[0]) / 1000, (near[1] - near[0]) / 1000, units),
            '',
          ],
        }),
      );
    }),
  );
  const blocks: Block[] =
    rows.length === 0
      ? [{ kind: 'paragraph', text: says.none }]
      : [
          { kind: 'paragraph', text: says.intro },
          {
            kind: 'table',
            caption: says.heading,
            columns: columnsOf(says.columns, [-1.6, 5, 2, 3.6, 2.8, 2.8, 2.4, 1.5]),
            rows,
          },
        ];
  return { id: 'cut-outs', heading: says.heading, level: 2, startsPage: false, blocks };
}

/** What goes back to the rack, piece by piece, each with the text of its label. */
export function offcutChapter({ plan, job, words, groupWords, units }: BookFacts): Section {
  const says = words.offcuts;
  const codes = codesOfOffcuts(plan, job);
  const rows = keptPieces(plan).flatMap((kept): Row[] => {
    const { name, group, length, width, grain, fromPanel } = kept;
    const byHand = fromPanel === null ? [] : [says.byHand(panelText(fromPanel))];
    return (codes.get(name) ?? []).map((code) => ({
      tick: `offcut/${code}`,
      cells: [
        [code, ...byHand].join('; '),
        groupWords(group),
        sizeText(length, width, units),
        says.grain[grain],
        '',
      ],
    }));
  });
  const blocks: Block[] =
    rows.length === 0
      ? [{ kind: 'paragraph', text: says.none }]
      : [
          { kind: 'paragraph', text: says.intro },
          {
            kind: 'table',
            caption: says.heading,
            columns: columnsOf(says.columns, [7, 5, 3, 2.4, 1.4]),
            rows,
          },
        ];
  return { id: 'offcuts', heading: says.heading, level: 2, startsPage: false, blocks };
}
