import { mmToUm, printMmShort } from '../basics/lengths.ts';
import { printSize } from '../drawing/lengthsInWords.ts';
import type { PanelSticker, StickerEdge, StickerLine, StickerPicture } from '../drawing/panelSticker.ts';
import type { Furniture, Panel } from '../model/furniture.ts';
import type { PlanFile, PlanPanel } from '../model/plan.ts';
import { listThickness } from './figures.ts';
import { type LabelledPiece, labelledPieces } from './panelStickerPieces.ts';
import type { EdgeSide, StickerWords, WorkStep } from './words/stickerWords.ts';

/** What labels are made of. */
export interface StickerSubject {
  readonly plan: PlanFile;
  /** Name of the order or list. */
  readonly job: string;
  /** What an order says of its panels beyond their sizes; absent for a plain list. */
  readonly furniture?: Furniture;
  /** Title of a board, finish or edging; the id where there is none. */
  readonly title: (id: string) => string;
  readonly words: StickerWords;
}

type Labelled<Is extends LabelledPiece['is']> = Extract<LabelledPiece, { is: Is }>;

function line(
  text: string,
  most: number,
  look: { readonly weight?: 'bold'; readonly need?: StickerLine['need'] } = {},
): StickerLine {
  return { text, most, weight: look.weight ?? 'regular', need: look.need ?? 'always' };
}

function sizeText(lengthMm: number, widthMm: number): string {
  return printSize(mmToUm(lengthMm), mmToUm(widthMm), 'mm');
}

/** With the thickness of the board, where the plan knows it. */
function solidText(lengthMm: number, widthMm: number, thicknessMm: number): string {
  const size = sizeText(lengthMm, widthMm);
  return thicknessMm === 0 ? size : `${size}\u00a0×\u00a0${listThickness(thicknessMm)}`;
}

/** The four edges with their edging, in the order in which they are told. */
function edgingOf({ edging }: PlanPanel): { readonly side: EdgeSide; readonly edging: string }[] {
  const all = [
    { side: 'length1', edging: edging.alongLength[0] },
    { side: 'length2', edging: edging.alongLength[1] },
    { side: 'width1', edging: edging.alongWidth[0] },
    { side: 'width2', edging: edging.alongWidth[1] },
  ] as const;
  return all.flatMap(({ side, edging: id }) => (id === null ? [] : [{ side, edging: id }]));
}

/** What is left to do at a panel, in the order of the work (common practice, no source). */
export function stepsAfterSawing(panel: PlanPanel, furnished: Panel | undefined): WorkStep[] {
  const steps: [WorkStep, boolean][] = [
    ['shape', furnished?.outline !== undefined],
    ['edge', edgingOf(panel).length > 0],
    ['drill', (furnished?.holes ?? []).length > 0],
    ['cutOut', (furnished?.cutOuts ?? []).length > 0],
    ['assemble', true],
  ];
  return steps.flatMap(([step, needed]) => (needed ? [step] : []));
}

function panelPicture(
  panel: PlanPanel,
  furnished: Panel | undefined,
  edges: readonly StickerEdge[],
): StickerPicture {
  return {
    kind: 'panel',
    lengthUm: mmToUm(panel.finishedLength),
    widthUm: mmToUm(panel.finishedWidth),
    grain: panel.grain,
    edges,
    openings: (furnished?.cutOuts ?? []).map(({ alongLength, alongWidth }) => ({ alongLength, alongWidth })),
    ...(furnished?.outline === undefined ? {} : { outline: furnished.outline }),
  };
}

function panelSticker(
  piece: Labelled<'panel'>,
  furnished: Panel | undefined,
  { plan, job, title, words }: StickerSubject,
): PanelSticker {
  const { number, panel } = piece.panel;
  const { board, finish, thickness } = piece.group;
  const edged = edgingOf(panel);
  const edgings = [...new Set(edged.map(({ edging }) => edging))];
  const edges = edged.map(({ side, edging }) => ({
    side,
    name: words.edges[side],
    edging: edgings.indexOf(edging),
  }));
  const edgingLines = edgings.map((edging, index) => {
    const names = edges.filter((edge) => edge.edging === index).map((edge) => edge.name);
    return line(`${names.join(' ')}: ${title(edging)}`, 2);
  });
  const order = panel.order === '' ? job : panel.order;
  const which = panel.count > 1 ? words.piece(piece.piece, panel.count) : '';
  const material = [title(board), title(finish)].filter((word) => word !== '').join(', ');
  return {
    code: piece.code,
    mark: String(number),
    heading: panel.name,
    lines: [
      line([panel.unit, which, order].filter((word) => word !== '').join(' · '), 2),
      line(plan.job === order ? '' : plan.job, 2, { need: 'optional' }),
      line(words.finished(sizeText(panel.finishedLength, panel.finishedWidth)), 2, {
        weight: 'bold',
        need: 'whole',
      }),
      line(words.cut(solidText(panel.length, panel.width, thickness)), 2, { need: 'whole' }),
      line(material, 2, { need: 'optional' }),
      ...(edgings.length === 0 ? [line(words.noEdging, 1)] : edgingLines),
      line(words.next(stepsAfterSawing(panel, furnished)), 2, { weight: 'bold' }),
    ],
    fillIn: null,
    picture: panelPicture(panel, furnished, edges),
  };
}

function offcutSticker(
  { group, sheet, copy, ending, code }: Labelled<'offcut'>,
  subject: StickerSubject,
): PanelSticker {
  const { job, title, words } = subject;
  const grain = group.stock.find((stock) => stock.id === sheet.stock)?.grain ?? 'none';
  const [lengthUm, widthUm] = [mmToUm(ending.length), mmToUm(ending.width)];
  const along = grain === 'length' ? words.grain(printMmShort(lengthUm)) : words.grain(printMmShort(widthUm));
  const from = words.from(job, sheet.number);
  return {
    code,
    mark: words.offcut,
    heading: `${group.id} ${sheet.number} ${ending.piece}`,
    lines: [
      line(solidText(ending.length, ending.width, group.thickness), 2, { weight: 'bold', need: 'whole' }),
      line(title(group.board), 2),
      line(title(group.finish), 2),
      line(grain === 'none' ? words.noGrain : along, 2),
      line(sheet.copies > 1 ? `${from} · ${words.sheet(copy, sheet.copies)}` : from, 3),
    ],
    fillIn: words.date,
    picture: { kind: 'offcut', lengthUm, widthUm, grain, edges: [], openings: [] },
  };
}

/**
 * A label for every panel, as often as it is made, in the order in which they come off the saw, and then one for every
 * offcut that goes back to the rack. Sizes are in mm, the figure along the grain first for panels and the one along the
 * sheet first for offcuts, as in the lists. Throws when the plan does not hold together.
 */
export function makePanelStickers(subject: StickerSubject): PanelSticker[] {
  const furnished = new Map(
    (subject.furniture?.units ?? []).flatMap((unit) =>
      unit.panels.map((panel) => [panel.id, panel] as const),
    ),
  );
  return labelledPieces(subject.plan, subject.job).map((piece) =>
    piece.is === 'panel'
      ? panelSticker(piece, furnished.get(piece.panel.panel.id), subject)
      : offcutSticker(piece, subject),
  );
}
