import { faceAxis } from '../basics/boxes.ts';
import type { ExpandedPanel } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { Hole } from '../model/furniture.ts';
import type { PanelShape } from './orientPanel.ts';

/** The holes of a panel in its own coordinates, from its finished corner; findings for those not in a broad face. */
export function panelHoles(
  panel: ExpandedPanel,
  shape: PanelShape,
  unit: string,
  findings: Finding[],
): readonly Hole[] {
  return panel.holes.flatMap((hole): Hole[] => {
    const { name, place, from, diameterUm, depthUm } = hole;
    const alongLength = hole[shape.length];
    const alongWidth = hole[shape.width];
    if (faceAxis[from] !== shape.thickness || alongLength === null || alongWidth === null) {
      findings.push({
        code: 'hole-on-edge',
        severity: 'error',
        message: `the hole “${name}” of the ${panel.name} of ${unit} cannot be drilled from the ${from}: that is an edge, not a broad face`,
        place,
        found: from,
      });
      return [];
    }
    const alongLengthUm = alongLength - panel.box[shape.length][0];
    const alongWidthUm = alongWidth - panel.box[shape.width][0];
    return [{ name, alongLengthUm, alongWidthUm, diameterUm, depthUm, face: from, place }];
  });
}
