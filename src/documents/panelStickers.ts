import { mmToUm } from '../basics/lengths.ts';
import { printLength, printSize, type Units } from '../drawing/lengthsInWords.ts';
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
  /** What an order says of its panels beyond the plan; absent for a plain list. */
  readonly furniture?: Furniture;
  /** Title of a board, finish or edging; the id where there is none. */
  readonly title: (id: string) => string;
  readonly words: StickerWords;
  readonly units: Units;
}

type Labelled<Is extends LabelledPiece['is']> = Extract<LabelledPiece, { is: Is }>;

function line(
  text: string,
  most: number,
  look: { readonly weight?: 'bold'; readonly need?: StickerLine['need'] } = {},
): StickerLine {
  return { text, most, weight: look.weight ?? 'regular', need: look.need ?? 'always' };
}

function sizeText(lengthMm: number, widthMm: number, units: Units): string {
  return printSize(mmToUm(lengthMm), mmToUm(widthMm), units);
}

/** With the thickness of the board, where the plan knows it; a line may end before it. */
function solidText(lengthMm: number, widthMm: number, thicknessMm: number, units: Units): string {
  const size = sizeText(lengthMm, widthMm, units);
  if (thicknessMm === 0) return size;
  const thickness = units === 'mm' ? listThickness(thicknessMm) : printLength(mmToUm(thicknessMm), units);
  return `${size}\u00a0× ${thickness}`;
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

/** What the furniture knows of the work on a panel; a plain list has none. */
interface WorkOn {
  readonly furnished: Panel | undefined;
  /** Whether another panel is let into it. */
  readonly hasGrooves: boolean;
}

/** What is left to do at a panel, in the order of the work (common practice, no source). */
function stepsAfterSawing(panel: PlanPanel, { furnished, hasGrooves }: WorkOn): WorkStep[] {
  const steps: [WorkStep, boolean][] = [
    ['shape', panel.byHand?.outline !== undefined],
    ['edge', edgingOf(panel).length > 0],
    ['groove', hasGrooves],
    ['drill', (furnished?.holes ?? []).length + (furnished?.edgeHoles ?? []).length > 0],
    ['cutOut', (panel.byHand?.openings ?? []).length > 0],
    ['assemble', true],
  ];
  return steps.flatMap(([step, needed]) => (needed ? [step] : []));
}

/** The panel as it is sawn. */
function panelPicture(panel: PlanPanel, edges: readonly StickerEdge[]): StickerPicture {
  const outline = panel.byHand?.outline;
  const um = ([from, to]: readonly [number, number]) => [mmToUm(from), mmToUm(to)] as const;
  return {
    kind: 'panel',
    lengthUm: mmToUm(panel.length),
    widthUm: mmToUm(panel.width),
    grain: panel.grain,
    edges,
    openings: (panel.byHand?.openings ?? []).map(({ length, width }) => ({
      alongLength: um(length),
      alongWidth: um(width),
    })),
    ...(outline === undefined ? {} : { outline: outline.map(um) }),
  };
}

/** The edges of a panel that get edging, and a line for each of its edgings. */
function edgingTold(panel: PlanPanel, { words, title }: StickerSubject) {
  const edged = edgingOf(panel);
  const edgings = [...new Set(edged.map(({ edging }) => edging))];
  const edges = edged.map(({ side, edging }) => ({
    side,
    name: words.edges[side],
    edging: edgings.indexOf(edging),
  }));
  const lines = edgings.map((edging, index) => {
    const names = edges.filter((edge) => edge.edging === index).map((edge) => edge.name);
    return line(`${names.join(' ')}: ${title(edging)}`, 2);
  });
  return { edges, lines: lines.length === 0 ? [line(words.noEdging, 1)] : lines };
}

function panelSticker(piece: Labelled<'panel'>, work: WorkOn, subject: StickerSubject): PanelSticker {
  const { plan, job, title, words, units } = subject;
  const { number, panel } = piece.panel;
  const { board, finish, thickness } = piece.group;
  const { edges, lines } = edgingTold(panel, subject);
  const order = panel.order === '' ? (plan.before?.job ?? job) : panel.order;
  const of = panel.label?.of ?? panel.count;
  const which = of > 1 ? words.piece(piece.piece, of) : '';
  const material = [title(board), title(finish)].filter((word) => word !== '').join(', ');
  const finished = words.finished(sizeText(panel.finishedLength, panel.finishedWidth, units));
  const cut = words.cut(solidText(panel.length, panel.width, thickness, units));
  return {
    code: piece.code,
    mark: String(number),
    heading: panel.name,
    lines: [
      line([panel.unit, which, order].filter((word) => word !== '').join(' · '), 2),
      line(plan.job === order ? '' : plan.job, 2, { need: 'optional' }),
      line(finished, 2, { weight: 'bold', need: 'whole' }),
      line(cut, 2, { need: 'whole' }),
      line(material, 2, { need: 'optional' }),
      ...lines,
      line(words.next(stepsAfterSawing(panel, work)), 2, { weight: 'bold' }),
    ],
    fillIn: null,
    picture: panelPicture(panel, edges),
  };
}

/** What an offcut is called, where it comes from and how it lies. */
interface Offcut {
  readonly name: string;
  readonly from: string;
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly grain: 'length' | 'width' | 'none';
}

/** Along which side of its sheet the grain runs. */
function grainOf({ group, sheet }: LabelledPiece): Offcut['grain'] {
  return group.stock.find((stock) => stock.id === sheet.stock)?.grain ?? 'none';
}

function sheetOffcut(piece: Labelled<'offcut'>, { job, words }: StickerSubject): Offcut {
  const { group, sheet, copy, ending } = piece;
  const from = words.from(job, sheet.number);
  return {
    name: `${group.id} ${sheet.number} ${ending.piece}`,
    from: sheet.copies > 1 ? `${from} · ${words.sheet(copy, sheet.copies)}` : from,
    lengthMm: ending.length,
    widthMm: ending.width,
    grain: grainOf(piece),
  };
}

/** Named and turned as in the list of offcuts: along the sides of the sheet. */
function cutOutOffcut(piece: Labelled<'cut-out'>, subject: StickerSubject): Offcut {
  const { group, sheet, ending, panel, opening, kept } = piece;
  const [lengthMm, widthMm] =
    ending.lengthAlong === 'length' ? [kept.length, kept.width] : [kept.width, kept.length];
  return {
    name: `${group.id} ${sheet.number} ${ending.piece} ${opening.name}`,
    from: subject.words.fromPanel(subject.job, panel.number),
    lengthMm,
    widthMm,
    grain: grainOf(piece),
  };
}

function offcutSticker(piece: Labelled<'offcut' | 'cut-out'>, subject: StickerSubject): PanelSticker {
  const { title, words, units } = subject;
  const { board, finish, thickness } = piece.group;
  const offcut = piece.is === 'offcut' ? sheetOffcut(piece, subject) : cutOutOffcut(piece, subject);
  const { name, from, lengthMm, widthMm, grain } = offcut;
  const along = printLength(mmToUm(grain === 'length' ? lengthMm : widthMm), units);
  return {
    code: piece.code,
    mark: words.offcut,
    heading: name,
    lines: [
      line(solidText(lengthMm, widthMm, thickness, units), 2, { weight: 'bold', need: 'whole' }),
      line(title(board), 2),
      line(title(finish), 2),
      line(grain === 'none' ? words.noGrain : words.grain(along), 2),
      line(from, 3),
    ],
    fillIn: words.date,
    picture: {
      kind: 'offcut',
      lengthUm: mmToUm(lengthMm),
      widthUm: mmToUm(widthMm),
      grain,
      edges: [],
      openings: [],
    },
  };
}

/**
 * A label for every panel, as often as it is made, in the order in which they come off the saw, and then one for every
 * offcut that goes back to the rack. The figure along the grain comes first for panels and the one along the sheet for
 * offcuts, as in the lists. Throws when the plan does not hold together.
 */
export function makePanelStickers(subject: StickerSubject): PanelSticker[] {
  const panels = (subject.furniture?.units ?? []).flatMap((unit) => unit.panels);
  const furnished = new Map(panels.map((panel) => [panel.id, panel]));
  const grooved = new Set(panels.flatMap(({ housings }) => housings.map(({ into }) => into)));
  const workOn = (id: string): WorkOn => ({ furnished: furnished.get(id), hasGrooves: grooved.has(id) });
  return labelledPieces(subject.plan, subject.job).map((piece) =>
    piece.is === 'panel'
      ? panelSticker(piece, workOn(piece.panel.panel.id), subject)
      : offcutSticker(piece, subject),
  );
}
