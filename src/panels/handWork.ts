import { axisFaces, extentSize } from '../basics/boxes.ts';
import { roundDownToTenth } from '../basics/lengths.ts';
import {
  type Polygon,
  polygonAreaUm2,
  polygonBounds,
  polygonWithout,
  rectangle,
} from '../basics/polygons.ts';
import { worthKeeping } from '../basics/worthKeeping.ts';
import type { CutOut } from '../model/furniture.ts';
import type { Extent, Face, Um } from '../model/geometry.ts';
import type { HandWork, OutlinePoint, SawnOpening } from '../model/part.ts';
import type { SawRules } from '../model/stock.ts';
import type { PanelShape } from './orientPanel.ts';
import type { WalledPanel } from './wallOutline.ts';

/** Taken off each side of a piece that fell out of a cut-out, to square it up. Common practice, no source. */
const SQUARING_UM: Um = 10_000;

/** Where the sawn part lies against the finished panel, from the finished panel's corner. */
export interface SawnPlace {
  readonly length: Extent;
  readonly width: Extent;
}

/** Corners as the model holds them. */
export function outlinePoints(polygon: Polygon): OutlinePoint[] {
  return polygon.map(([alongLengthUm, alongWidthUm]) => ({ alongLengthUm, alongWidthUm }));
}

/** Where the sawn part lies, when each face of it stands out by so much over the finished panel (less is negative). */
export function sawnPlace(
  shape: PanelShape,
  cut: { readonly lengthUm: Um; readonly widthUm: Um },
  over: (face: Face) => Um,
): SawnPlace {
  const from = (face: Face) => 0 - over(face);
  const [length, width] = [from(axisFaces[shape.length][0]), from(axisFaces[shape.width][0])];
  return { length: [length, length + cut.lengthUm], width: [width, width + cut.widthUm] };
}

/** Size of what falls out of an opening once it is squared up, or null where it is too small for the rack. */
function keptPiece(
  cutOut: CutOut,
  least: SawRules['leastOffcut'],
): { readonly lengthUm: Um; readonly widthUm: Um } | null {
  const [lengthUm, widthUm] = [cutOut.alongLength, cutOut.alongWidth].map((extent) =>
    roundDownToTenth(extentSize(extent) - 2 * SQUARING_UM),
  ) as [Um, Um];
  return worthKeeping(lengthUm, widthUm, least) ? { lengthUm, widthUm } : null;
}

/** Where an opening is on the sawn part, which ends before the edging does. */
function onSawn(opening: Extent, sawn: Extent): Extent {
  return [Math.max(0, opening[0] - sawn[0]), Math.min(extentSize(sawn), opening[1] - sawn[0])];
}

/**
 * What is cut by hand from the sawn part: its outline along the wall with the allowance for scribing still on, and its
 * openings, with the size of the pieces that are kept where `keep` says from which size on. Undefined where the saw
 * does it all, or where the wall leaves no more than the sawn rectangle.
 */
export function handWork(
  walled: WalledPanel,
  cutOuts: readonly CutOut[],
  sawn: SawnPlace,
  keep: SawRules['leastOffcut'] | null,
): HandWork | undefined {
  const whole = rectangle(sawn.length, sawn.width);
  const left = polygonWithout(whole, walled.beyond)[0];
  const moved = ([u, v]: Polygon[number]) => [u - sawn.length[0], v - sawn.width[0]] as const;
  const openings = cutOuts.map((cutOut): SawnOpening => {
    const kept = keep === null ? null : keptPiece(cutOut, keep);
    return {
      name: cutOut.name,
      alongLength: onSawn(cutOut.alongLength, sawn.length),
      alongWidth: onSawn(cutOut.alongWidth, sawn.width),
      ...(kept === null ? {} : { kept }),
    };
  });
  const shaped = walled.outline !== null && left !== undefined && isShaped(left);
  if (!shaped && openings.length === 0) return undefined;
  return { ...(shaped ? { outline: outlinePoints(left.map(moved)) } : {}), openings };
}

function isShaped(polygon: Polygon): boolean {
  const { u, v } = polygonBounds(polygon);
  return polygonAreaUm2(polygon) !== extentSize(u) * extentSize(v);
}
