import { axisFaces, extentSize, faceAxis } from '../basics/boxes.ts';
import { printMm, roundToTenth } from '../basics/lengths.ts';
import type { ExpandedCutOut, ExpandedPanel } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { CutOut, Panel, PanelEdge } from '../model/furniture.ts';
import type { Axis, Extent, Face, Um } from '../model/geometry.ts';
import type { Edging } from '../model/library.ts';
import type { Materials } from './materials.ts';
import type { PanelShape } from './orientPanel.ts';

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
>;

const MM2_PER_M2 = 1e6;
const UM_PER_M = 1e6;

/**
 * Sizes of a panel whose sides are told apart.
 *
 *     cut size = finished size − thickness of deducted edging + pre-milling, for each edged side, to 0.1 mm
 *     mass = areal mass · (finished area − deducted edging − openings) + edging by the metre
 */
export function sizePanel(
  panel: ExpandedPanel,
  materials: Materials,
  shape: PanelShape,
  unit: string,
  findings: Finding[],
): Sizes {
  const lengthUm = extentSize(panel.box[shape.length]);
  const widthUm = extentSize(panel.box[shape.width]);
  const edged = edgedFaces(panel, materials, shape, unit, findings);
  const [atLengthStart, atLengthEnd] = axisFaces[shape.length];
  const [atWidthStart, atWidthEnd] = axisFaces[shape.width];
  const edge = (face: Face): PanelEdge => ({
    face,
    edging: edged.has(face) ? (materials.edging?.id ?? null) : null,
    lengthUm: faceAxis[face] === shape.length ? widthUm : lengthUm,
  });
  const edges = [edge(atWidthStart), edge(atWidthEnd), edge(atLengthStart), edge(atLengthEnd)] as const;
  const core = (um: Um, faces: readonly Face[]) =>
    um - faces.filter((face) => edged.has(face)).length * deductedUm(materials.edging);
  const cut = (um: Um, faces: readonly Face[]) =>
    roundToTenth(
      core(um, faces) + faces.filter((face) => edged.has(face)).length * preMillingUm(materials.edging),
    );
  const cutOuts = panel.cutOuts.flatMap((cutOut) => openingOf(cutOut, panel, shape, unit, findings));
  const coreAreaMm2 =
    (core(lengthUm, axisFaces[shape.length]) / 1000) * (core(widthUm, axisFaces[shape.width]) / 1000);
  const openMm2 = cutOuts.reduce(
    (sum, { alongLength, alongWidth }) =>
      sum + (extentSize(alongLength) / 1000) * (extentSize(alongWidth) / 1000),
    0,
  );
  const edgedUm = edges.reduce((sum, { edging, lengthUm }) => sum + (edging === null ? 0 : lengthUm), 0);
  return {
    finishedLengthUm: lengthUm,
    finishedWidthUm: widthUm,
    cutLengthUm: cut(lengthUm, axisFaces[shape.length]),
    cutWidthUm: cut(widthUm, axisFaces[shape.width]),
    edging: {
      alongLength: [edges[0].edging, edges[1].edging],
      alongWidth: [edges[2].edging, edges[3].edging],
    },
    edges,
    cutOuts,
    massKg:
      (materials.board.arealMassKgPerM2 * (coreAreaMm2 - openMm2)) / MM2_PER_M2 +
      (edgedUm / UM_PER_M) * (materials.edging?.massKgPerM ?? 0),
  };
}

function deductedUm(edging: Edging | null): Um {
  return edging?.deducted === true ? edging.thicknessUm : 0;
}

function preMillingUm(edging: Edging | null): Um {
  return edging?.preMillingUm ?? 0;
}

/** Faces that get edging: none where the order leaves the role's edges raw. All six faces stand for the four edges. */
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
  const edged = new Set(panel.edging.filter((face) => !broad.includes(face)));
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
  return [{ name: cutOut.name, alongLength, alongWidth }];
}
