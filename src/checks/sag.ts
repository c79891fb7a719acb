import { extentSize } from '../basics/boxes.ts';
import { printMmShort } from '../basics/lengths.ts';
import type { Finding } from '../model/finding.ts';
import type { Furniture, Panel, PlacedUnit } from '../model/furniture.ts';
import type { Board, Library } from '../model/library.ts';
import { panelFinding, panelOfUnit } from './names.ts';
import { type LoadedStrip, sagMm } from './sagFormula.ts';
import { type FreeSpan, freeSpans, leastWidthAcross } from './sagSpans.ts';

/** A shelf may sag by this part of its span. Common practice, no source. */
const SPANS_PER_SAG = 200;
/** For boards that state none: the least figures taken for poplar plywood. Common practice, no source. */
const CAUTIOUS_STIFFNESS_MPA = { along: 5000, across: 3000 } as const;
/** Modulus of elasticity over shear modulus of wood. Common practice, no source. */
const STIFFNESS_PER_SHEAR = 16;
const THICKEST_MM = 100;
const MM2_PER_M2 = 1e6;

/** A span of a panel under its load, with how far it sags. */
export interface Sag {
  readonly panel: Panel;
  readonly spanMm: number;
  /** On the span, without the weight of the board. */
  readonly loadKg: number;
  readonly sagMm: number;
  readonly limitMm: number;
  readonly strip: LoadedStrip;
}

/** What a level panel is to bear: its own figure, or its role's for each square metre. */
function loadKgOf(panel: Panel, library: Library): number {
  if (panel.loadKg !== undefined) return panel.loadKg;
  const areaM2 = ((panel.finishedLengthUm / 1000) * (panel.finishedWidthUm / 1000)) / MM2_PER_M2;
  return (library.loadsKgPerM2?.get(panel.role) ?? 0) * areaM2;
}

/** A part that may be turned on the sheet may come out with its grain across the span. */
function stiffnessMPa(panel: Panel, board: Board | undefined, span: FreeSpan): number {
  const { along, across } = board?.stiffnessMPa ?? CAUTIOUS_STIFFNESS_MPA;
  if (panel.grain === 'none') return Math.min(along, across);
  return span.along === 'length' ? along : across;
}

function sagOf(
  panel: Panel,
  unit: PlacedUnit,
  span: FreeSpan,
  loadKg: number,
  board: Board | undefined,
): Sag {
  const spanMm = extentSize(span.extent) / 1000;
  const share = Math.min(1, extentSize(span.extent) / extentSize(panel.placeBox[span.axis]));
  const stiffness = stiffnessMPa(panel, board, span);
  const strip: LoadedStrip = {
    loadKg: (loadKg + panel.massKg) * share,
    spanMm,
    widthMm: leastWidthAcross(panel, unit, span) / 1000,
    thicknessMm: panel.thicknessUm / 1000,
    stiffnessMPa: stiffness,
    shearMPa: stiffness / STIFFNESS_PER_SHEAR,
  };
  return {
    panel,
    spanMm,
    loadKg: loadKg * share,
    sagMm: sagMm(strip),
    limitMm: spanMm / SPANS_PER_SAG,
    strip,
  };
}

/** How many times the limit. */
function excess(sag: Sag): number {
  return sag.sagMm / sag.limitMm;
}

/**
 * How far a level panel of a unit sags under its load, at its worst free span along the side along which it is held
 * better; null where it bears nothing, or is not held at two ends. The panel counts as a strip that lies on its supports;
 * one that is held on all sides sags less.
 */
export function panelSag(panel: Panel, unit: PlacedUnit, furniture: Furniture, library: Library): Sag | null {
  if (panel.thicknessAxis !== 'z') return null;
  const loadKg = loadKgOf(panel, library);
  if (loadKg <= 0) return null;
  const board = library.boards.get(panel.board);
  const ways = freeSpans(panel, unit, furniture)
    .filter((spans) => spans.length > 0)
    .map((spans) => spans.map((span) => sagOf(panel, unit, span, loadKg, board)))
    .map((sags) => sags.reduce((worst, sag) => (excess(sag) > excess(worst) ? sag : worst)));
  return ways.length === 0 ? null : ways.reduce((best, sag) => (excess(sag) < excess(best) ? sag : best));
}

/** The least thickness, to 0.1 mm, at which a strip keeps within the limit; null where none is reasonable. */
function thicknessEnoughMm({ strip, limitMm }: Sag): number | null {
  for (let tenths = Math.ceil(strip.thicknessMm * 10); tenths <= THICKEST_MM * 10; tenths++) {
    if (sagMm({ ...strip, thicknessMm: tenths / 10 }) <= limitMm) return tenths / 10;
  }
  return null;
}

function adviceFor(sag: Sag): string {
  const halved = sagMm({ ...sag.strip, spanMm: sag.spanMm / 2, loadKg: sag.strip.loadKg / 2 });
  const thick = thicknessEnoughMm(sag);
  const board = thick === null ? '' : `, take a board of ${thick.toFixed(1)} mm or more`;
  return `support it in the middle, where ${halved.toFixed(1)} mm are left${board}, or put a rail under it`;
}

function finding(sag: Sag): Finding {
  const { panel, spanMm, limitMm } = sag;
  const span = printMmShort(Math.round(spanMm * 1000));
  const message = `${panelOfUnit(panel)} sags ${sag.sagMm.toFixed(1)} mm over ${span} mm under ${sag.loadKg.toFixed(1)} kg; 1/${SPANS_PER_SAG} of the span is ${limitMm.toFixed(1)} mm`;
  return { ...panelFinding('sags', panel, message, adviceFor(sag)), severity: 'warning' };
}

/** Level panels that sag by more than is usual under what they are to bear; panels that a repeat made alike once. */
export function checkSag(furniture: Furniture, library: Library): Finding[] {
  return furniture.units.flatMap((unit) => {
    const worst = new Map<string, Sag>();
    for (const panel of unit.panels) {
      const sag = panelSag(panel, unit, furniture, library);
      if (sag === null || sag.sagMm <= sag.limitMm) continue;
      const known = worst.get(panel.baseName);
      if (known === undefined || excess(sag) > excess(known)) worst.set(panel.baseName, sag);
    }
    return [...worst.values()].map(finding);
  });
}
