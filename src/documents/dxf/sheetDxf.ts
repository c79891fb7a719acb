import { type SawnCut, type SawnEnd, type SheetRect, sawSheet } from '../../drawing/sawnSheet.ts';
import type { PlanGroup, PlanSheet } from '../../model/plan.ts';
import { type DxfDrawing, type DxfPoint, type DxfShape, layerName, rectangleShape } from './dxfText.ts';

const LARGEST_LETTERS_UM = 20_000;
/** Below this letters are not worth writing. */
const SMALLEST_LETTERS_UM = 3000;
/** Width of a letter as a part of its height: DXF's standard letters are about as wide as they are high. */
const LETTER_WIDTH = 1;

function rectangle(layer: string, { x0, y0, x1, y1 }: SheetRect): DxfShape {
  return rectangleShape(layer, [x0, x1], [y0, y1]);
}

/** A text at the near left corner of a piece, as large as it has room; nothing where it has none. */
function textIn(layer: string, { x0, y0, x1, y1 }: SheetRect, text: string): DxfShape[] {
  const room = Math.min((x1 - x0) / (text.length * LETTER_WIDTH + 1), (y1 - y0) / 2);
  const heightUm = Math.floor(Math.min(LARGEST_LETTERS_UM, room));
  if (heightUm < SMALLEST_LETTERS_UM) return [];
  const margin = Math.floor(heightUm / 2);
  return [{ kind: 'text', layer, text, at: [x0 + margin, y0 + margin], heightUm }];
}

/**
 * Where the blade runs: its side towards the piece that the fence setting measures, or for a trim towards what is kept,
 * so that a line lies exactly on the size that comes out.
 */
function cutLine({ kerf, runsAlong, step }: SawnCut): { readonly from: DxfPoint; readonly to: DxfPoint } {
  const keptBeyond = step.cut === 'trim' && (step.side === 'left' || step.side === 'near');
  if (runsAlong === 'x') {
    const y = keptBeyond ? kerf.y1 : kerf.y0;
    return { from: [kerf.x0, y], to: [kerf.x1, y] };
  }
  const x = keptBeyond ? kerf.x1 : kerf.x0;
  return { from: [x, kerf.y0], to: [x, kerf.y1] };
}

function pieceShapes({ piece, ending, panel }: SawnEnd, numberOf: (panel: string) => number): DxfShape[] {
  if (panel !== null) {
    const name = `${numberOf(panel.id)} ${panel.name}`;
    const size = `${panel.length} x ${panel.width}`;
    return [
      rectangle('PANELS', piece.rect),
      ...textIn(
        'NOTES',
        piece.rect,
        panel.unit === '' ? `${name} ${size}` : `${name}, ${panel.unit}, ${size}`,
      ),
    ];
  }
  if (ending.is !== 'offcut') return [rectangle('WASTE', piece.rect)];
  const offcut = `offcut ${ending.length} x ${ending.width}`;
  return [rectangle('OFFCUTS', piece.rect), ...textIn('NOTES', piece.rect, offcut)];
}

/**
 * One cut plan as it lies on the saw, the sheet's near left corner at the origin:
 *
 * | layer | holds |
 * |---|---|
 * | `SHEET` | the raw sheet |
 * | `PANELS`, `OFFCUTS`, `WASTE` | what comes out of it, each a closed polyline as sawn |
 * | `CUT-TRIM`, `CUT-RIP`, `CUT-CROSSCUT`, `CUT-RECUT`, `CUT-PART` | a line a cut, in the order of sawing, on the side of the blade that gives the size |
 * | `NOTES` | texts |
 */
export function sheetDxf(
  job: string,
  group: PlanGroup,
  sheet: PlanSheet,
  numberOf: (panel: string) => number,
): DxfDrawing {
  const sawn = sawSheet(group, sheet);
  const { length, width, grain } = sawn.stock;
  const about = `${job}: ${group.id}, cut plan ${sheet.number}, ${sheet.copies} off`;
  const notes = [
    about,
    `${length} x ${width} x ${group.thickness} mm, kerf ${group.saw.kerf} mm, grain ${grain === 'none' ? 'none' : `along the ${grain}`}`,
  ];
  return {
    about: [about],
    shapes: [
      rectangle('SHEET', sawn.raw),
      ...sawn.ends.flatMap((end) => pieceShapes(end, numberOf)),
      ...sawn.cuts.map(
        (cut): DxfShape => ({
          kind: 'line',
          layer: layerName(`CUT-${cut.step.cut}`),
          ...cutLine(cut),
        }),
      ),
      ...notes.map(
        (text, index): DxfShape => ({
          kind: 'text',
          layer: 'NOTES',
          text,
          at: [0, -(index + 2) * 2 * LARGEST_LETTERS_UM],
          heightUm: LARGEST_LETTERS_UM,
        }),
      ),
    ],
  };
}
