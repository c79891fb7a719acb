import { axisFaces, extentSize } from '../basics/boxes.ts';
import { printMm, roundToTenth } from '../basics/lengths.ts';
import {
  type Polygon,
  polygonAreaUm2,
  polygonBounds,
  polygonWithout,
  rectangle,
  runAlong,
  sharedPolygons,
} from '../basics/polygons.ts';
import type { ExpandedCutOut, ExpandedPanel } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { CutOut, Panel, PanelEdge } from '../model/furniture.ts';
import type { Axis, Extent, Face, Um } from '../model/geometry.ts';
import type { Edging } from '../model/library.ts';
import type { SawRules } from '../model/stock.ts';
import { handWork, outlinePoints, sawnPlace } from './handWork.ts';
import type { Materials } from './materials.ts';
import type { PanelShape } from './orientPanel.ts';
import type { WalledPanel } from './wallOutline.ts';

type Sizes = Pick<
  Panel,
  | 'finishedLengthUm'
  | 'finishedWidthUm'
  | 'cutLengthUm'
  | 'cutWidthUm'
  | 'edging'
  | 'edges'
  | 'cutOuts'
  | 'massKg'
  | 'outline'
  | 'scribed'
  | 'byHand'
>;

const UM2_PER_M2 = 1e12;
const UM_PER_M = 1e6;

/**
 * Sizes of a panel whose sides are told apart and whose walls are known.
 *
 *     cut size = finished size − thickness of deducted edging + pre-milling, for each edged side,
 *                + allowance for scribing, for each side along a wall, to 0.1 mm
 *     mass = areal mass · (finished shape − deducted edging − openings) + edging by the metre
 *
 * `keep` is the least size of a piece from a cut-out that is kept, or null where none is.
 */
export function sizePanel(
  walled: WalledPanel,
  materials: Materials,
  shape: PanelShape,
  unit: string,
  keep: SawRules['leastOffcut'] | null,
  findings: Finding[],
): Sizes {
  const { panel, outline, scribed } = walled;
  const lengthUm = extentSize(panel.box[shape.length]);
  const widthUm = extentSize(panel.box[shape.width]);
  const finished = outline ?? rectangle([0, lengthUm], [0, widthUm]);
  const edges = edgesOf(walled, finished, materials, shape, unit, findings);
  const { edging } = materials;
  /** How far the sawn part stands out over the finished one. */
  const over = (face: Face): Um => {
    const allowance = scribed.find((wall) => wall.face === face)?.allowanceUm ?? 0;
    const edged = edges.some((edge) => edge.face === face && edge.edging !== null);
    return allowance + (edged ? preMillingUm(edging) - deductedUm(edging) : 0);
  };
  const cut = (um: Um, faces: readonly Face[]) =>
    roundToTenth(faces.reduce((sum, face) => sum + over(face), um));
  const cutLengthUm = cut(lengthUm, axisFaces[shape.length]);
  const cutWidthUm = cut(widthUm, axisFaces[shape.width]);
  const cutOuts = panel.cutOuts.flatMap((cutOut) =>
    openingOf(cutOut, panel, finished, shape, unit, findings),
  );
  const sawn = sawnPlace(shape, { lengthUm: cutLengthUm, widthUm: cutWidthUm }, over);
  const byHand = handWork(walled, cutOuts, sawn, keep);
  return {
    finishedLengthUm: lengthUm,
    finishedWidthUm: widthUm,
    cutLengthUm,
    cutWidthUm,
    edging: {
      alongLength: [edges[0].edging, edges[1].edging],
      alongWidth: [edges[2].edging, edges[3].edging],
    },
    edges,
    cutOuts,
    massKg: massKg(finished, edges, cutOuts, materials),
    ...(outline === null ? {} : { outline: outlinePoints(outline) }),
    ...(scribed.length === 0 ? {} : { scribed }),
    ...(byHand === undefined ? {} : { byHand }),
  };
}

type FourEdges = readonly [PanelEdge, PanelEdge, PanelEdge, PanelEdge];

/** The edges along the length at width 0 and full width, then along the width; each as long as the wall leaves it. */
function edgesOf(
  { panel }: WalledPanel,
  finished: Polygon,
  materials: Materials,
  shape: PanelShape,
  unit: string,
  findings: Finding[],
): FourEdges {
  const edged = edgedFaces(panel, materials, shape, unit, findings);
  const { u, v } = polygonBounds(finished);
  const edge = (face: Face, axis: 'u' | 'v', at: Um): PanelEdge => {
    const lengthUm = runAlong(finished, axis, at);
    const edging = lengthUm > 0 && edged.has(face) ? (materials.edging?.id ?? null) : null;
    return { face, edging, lengthUm };
  };
  const [atLengthStart, atLengthEnd] = axisFaces[shape.length];
  const [atWidthStart, atWidthEnd] = axisFaces[shape.width];
  return [
    edge(atWidthStart, 'v', v[0]),
    edge(atWidthEnd, 'v', v[1]),
    edge(atLengthStart, 'u', u[0]),
    edge(atLengthEnd, 'u', u[1]),
  ];
}

/** Board less what deducted edging takes the place of and less the openings, and edging by the metre. */
function massKg(
  finished: Polygon,
  edges: FourEdges,
  cutOuts: readonly CutOut[],
  { board, edging }: Materials,
): number {
  const { u, v } = polygonBounds(finished);
  const within = (edge: PanelEdge) => (edge.edging === null ? 0 : deductedUm(edging));
  const core = rectangle(
    [u[0] + within(edges[2]), u[1] - within(edges[3])],
    [v[0] + within(edges[0]), v[1] - within(edges[1])],
  );
  const coreUm2 = sharedPolygons(finished, core).reduce((sum, piece) => sum + polygonAreaUm2(piece), 0);
  const openUm2 = cutOuts.reduce(
    (sum, { alongLength, alongWidth }) => sum + extentSize(alongLength) * extentSize(alongWidth),
    0,
  );
  const edgedUm = edges.reduce((sum, edge) => sum + (edge.edging === null ? 0 : edge.lengthUm), 0);
  return (
    (board.arealMassKgPerM2 * (coreUm2 - openUm2)) / UM2_PER_M2 +
    (edgedUm / UM_PER_M) * (edging?.massKgPerM ?? 0)
  );
}

function deductedUm(edging: Edging | null): Um {
  return edging?.deducted === true ? edging.thicknessUm : 0;
}

function preMillingUm(edging: Edging | null): Um {
  return edging?.preMillingUm ?? 0;
}

/**
 * Faces that get edging: none where the order leaves the role's edges raw, and none that follows the wall, which is cut
 * by hand. All six faces stand for the four edges.
 */
function edgedFaces(
  panel: ExpandedPanel,
  materials: Materials,
  shape: PanelShape,
  unit: string,
  findings: Finding[],
): ReadonlySet<Face> {
  const broad = axisFaces[shape.thickness];
  const all = new Set(panel.edging).size === 6;
  for (const face of all ? [] : panel.edging.filter((face) => broad.includes(face))) {
    findings.push({
      code: 'edging-on-face',
      severity: 'error',
      message: `the ${panel.name} of ${unit} cannot have edging on its ${face}: that is a broad face, not an edge`,
      place: panel.place,
      found: face,
      expected: `${axisFaces[shape.length].join(', ')}, ${axisFaces[shape.width].join(', ')} or all`,
    });
  }
  if (materials.edging === null) return new Set();
  const atWall = (panel.followsWall ?? []).map((wall): Face => wall.face);
  const edged = new Set(panel.edging.filter((face) => !broad.includes(face) && !atWall.includes(face)));
  if (edged.size > 0 && materials.edging.widthUm < materials.board.thicknessUm) {
    findings.push({
      code: 'edging-too-narrow',
      severity: 'error',
      message: `the edging ${materials.edging.id} is ${printMm(materials.edging.widthUm)} mm wide, the ${panel.name} of ${unit} is ${printMm(materials.board.thicknessUm)} mm thick`,
      place: panel.place,
      advice: 'choose a wider edging for this role in the order',
    });
  }
  return edged;
}

/** A cut-out in the panel's own coordinates, from its finished corner; a finding where it is not within the panel. */
function openingOf(
  cutOut: ExpandedCutOut,
  panel: ExpandedPanel,
  finished: Polygon,
  shape: PanelShape,
  unit: string,
  findings: Finding[],
): CutOut[] {
  const report = (message: string) => {
    findings.push({
      code: 'cut-out-wrong',
      severity: 'error',
      message: `the cut-out “${cutOut.name}” of the ${panel.name} of ${unit} ${message}`,
      place: cutOut.place,
    });
    return [];
  };
  const along = (axis: Axis): Extent | null => {
    const extent = cutOut[axis];
    const from = panel.box[axis][0];
    return extent === null ? null : [extent[0] - from, extent[1] - from];
  };
  const alongLength = along(shape.length);
  const alongWidth = along(shape.width);
  if (alongLength === null || alongWidth === null || cutOut[shape.thickness] !== null) {
    return report(`must state ${shape.length} and ${shape.width}, the sides of the panel, and nothing else`);
  }
  const over = (extent: Extent, axis: Axis): Um =>
    Math.max(-extent[0], extent[1] - extentSize(panel.box[axis]));
  const overLength = over(alongLength, shape.length);
  const overWidth = over(alongWidth, shape.width);
  if (overLength > 0) return report(`goes ${printMm(overLength)} mm over the edge along ${shape.length}`);
  if (overWidth > 0) return report(`goes ${printMm(overWidth)} mm over the edge along ${shape.width}`);
  const overWall = polygonWithout(rectangle(alongLength, alongWidth), [finished]);
  if (overWall.length > 0) return report('goes over the edge that the wall gives the panel');
  return [{ name: cutOut.name, alongLength, alongWidth }];
}
