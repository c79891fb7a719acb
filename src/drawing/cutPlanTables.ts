import { mmToUm } from '../basics/lengths.ts';
import type { PlanGroup, PlanPanel } from '../model/plan.ts';
import { printRect, printSetting, printSize, type Units } from './lengthsInWords.ts';
import { plainText, SMALL, shorten } from './lettering.ts';
import type { SawnCut, SawnPiece, SawnSheet } from './sawnSheet.ts';
import type { SheetView } from './sheetView.ts';
import type { Sketch } from './sketch.ts';
import type { Table } from './tables.ts';

/** Least width in mm of a table's column on the page. */
export const LEAST_TABLE_WIDTH = 62;

/** Below these settings between fence and blade the hands keep off (power-tool safety texts; see the caution line). */
export const PUSH_STICK_UM = 150_000;
export const PUSH_BLOCK_UM = 50_000;

const SIGN_ACROSS = '↔';
const SIGN_UP = '↕';
export const CARE_SIGN = '▲';

export interface PanelText {
  /** `left side, galley sink`. */
  readonly full: string;
  /** Mark in the key, when the drawing uses one. */
  readonly mark: string | null;
}

/** Unit and, when the group holds panels of several orders, the order of a panel. */
export function unitOf(panel: PlanPanel, group: PlanGroup): string {
  const several = group.panels.some((other) => other.order !== group.panels[0]!.order);
  return [panel.unit, several ? panel.order : '']
    .map(plainText)
    .filter((text) => text !== '')
    .join(', ');
}

export function panelSize(panel: PlanPanel, units: Units): string {
  return printSize(mmToUm(panel.length), mmToUm(panel.width), units);
}

/** What a piece is called from the cut that makes it on: its ending when it is one, else its name and size. */
function describePiece(
  piece: SawnPiece,
  sawn: SawnSheet,
  group: PlanGroup,
  units: Units,
  markOf: (panel: string) => string | null,
): string {
  const size = printRect(piece.rect, sawn.stock.grain, units);
  const end = sawn.ends.find((one) => one.piece.name === piece.name);
  if (!end) return `${plainText(piece.name)} (${size})`;
  if (end.panel) {
    const mark = markOf(end.panel.id);
    const unit = unitOf(end.panel, group);
    const name = [mark === null ? '' : `[${mark}]`, plainText(end.panel.name)]
      .filter((t) => t !== '')
      .join(' ');
    return `${unit === '' ? name : `${name}, ${unit}`} ${panelSize(end.panel, units)}`;
  }
  return `${end.ending.is === 'offcut' ? 'OFFCUT' : 'waste'} ${size}`;
}

function cutWord(cut: SawnCut): string {
  return cut.step.cut === 'trim' ? `trim ${cut.step.side}` : cut.step.cut;
}

/** Whether a cut leaves less between fence and blade than hands need, trims and scrapes of a whole sheet left aside. */
export function needsPushStick(cut: SawnCut): boolean {
  return cut.step.cut !== 'trim' && mmToUm(cut.step.fence) < PUSH_STICK_UM;
}

function setting(cut: SawnCut, units: Units): string {
  if (cut.step.cut === 'trim') return `take ${printSetting(mmToUm(cut.step.take), units)}`;
  const fence = printSetting(mmToUm(cut.step.fence), units);
  return needsPushStick(cut) ? `${CARE_SIGN} ${fence}` : fence;
}

/** Every step in order, with the piece in hand, the fence and what comes out. */
export function stepTable(
  sketch: Sketch,
  sawn: SawnSheet,
  view: SheetView,
  group: PlanGroup,
  units: Units,
  markOf: (panel: string) => string | null,
): Table {
  const shortName = (name: string) => shorten(plainText(name), 44, SMALL, 'regular', sketch.measure);
  const endNames = new Map(sawn.ends.map((end) => [end.piece.name, end]));
  const rows = sawn.cuts.map((cut): string[] => {
    const what = (piece: SawnPiece) => describePiece(piece, sawn, group, units, markOf);
    const [first, rest] = cut.gives;
    const comesOut =
      rest === undefined
        ? what(first!)
        : `${what(first!)}${endNames.has(first!.name) ? '' : ''} + ${what(rest)}`;
    return [
      String(cut.number),
      view.onPage(cut.runsAlong) === 'across' ? SIGN_ACROSS : SIGN_UP,
      cutWord(cut),
      shortName(cut.hand.name),
      setting(cut, units),
      comesOut,
    ];
  });
  const widest = (column: number, least: number, most: number) => {
    const widths = rows.map((row) => sketch.measure(row[column]!, SMALL, 'regular'));
    return (
      Math.min(
        most,
        widths.reduce((a, b) => Math.max(a, b), least),
      ) + 0.01
    );
  };
  return {
    title: 'Cuts in order',
    columns: [
      { heading: 'no.', widthMm: widest(0, 4, 12), anchor: 'end', weight: 'bold' },
      { heading: '', widthMm: widest(1, 2, 4), anchor: 'middle' },
      { heading: 'cut', widthMm: widest(2, 4, 14) },
      { heading: 'piece', widthMm: widest(3, 6, 16) },
      { heading: 'fence', widthMm: widest(4, 8, 18), anchor: 'end', weight: 'regular' },
      { heading: 'gives', widthMm: 0, grows: true },
    ],
    rows,
  };
}

/** The panels that have only a mark on the drawing. */
export function keyTable(
  sketch: Sketch,
  keyed: readonly { readonly panel: PlanPanel; readonly mark: string }[],
  group: PlanGroup,
  units: Units,
  runOf: (panel: PlanPanel) => string,
): Table {
  const rows = keyed.map(({ panel, mark }) => {
    const unit = unitOf(panel, group);
    const name = plainText(panel.name);
    const run = runOf(panel);
    return [
      mark,
      [unit === '' ? name : `${name}, ${unit}`, run].filter((text) => text !== '').join(' · '),
      panelSize(panel, units),
      panel.grain === 'length' ? 'yes' : 'no',
    ];
  });
  const sizes = rows.map((row) => sketch.measure(row[2]!, SMALL, 'regular'));
  return {
    title: 'Key to marks',
    columns: [
      { heading: 'mark', widthMm: 6.5, weight: 'bold' },
      { heading: 'panel', widthMm: 0, grows: true },
      { heading: 'cut size', widthMm: sizes.reduce((a, b) => Math.max(a, b), 9) },
      { heading: 'grain', widthMm: 6.8 },
    ],
    rows,
  };
}

/** Marks in the order a, b, … z, aa, ab, …; `index` from 0. */
export function markAt(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26));
  return index < 26 ? letter : markAt(Math.floor(index / 26) - 1) + letter;
}
