import type { Panel } from '../model/furniture.ts';
import type { Axis, Box, Um } from '../model/geometry.ts';
import { isometric, seenFaces } from './explodedView.ts';

type SeenFace = ReturnType<typeof seenFaces>[number];

/** Direction to the eye, which stands at the front, on the left and above. */
const TO_EYE: Record<Axis, 1 | -1> = { x: -1, y: -1, z: 1 };
/** Tones of faces as boxes have them, by the axis they are most square to. */
const TONE: Record<Axis, number> = { z: 0, y: 0.06, x: 0.16 };

/** A corner of the outline in space, at a depth of the panel's thickness. */
function spot(
  panel: Panel,
  box: Box,
  along: { length: Um; width: Um },
  through: Um,
): readonly [number, number] {
  const { lengthAxis, widthAxis, thicknessAxis } = panel;
  const at: Record<Axis, Um> = { x: 0, y: 0, z: 0 };
  at[lengthAxis] = box[lengthAxis][0] + along.length;
  at[widthAxis] = box[widthAxis][0] + along.width;
  at[thicknessAxis] = through;
  return isometric(at.x, at.y, at.z);
}

/**
 * The faces that are seen of a panel whose box has been moved to `box`, each as the corners of its picture with a tone,
 * farthest first: the three of a box, or the sides of an outline that look to the eye and then its broad face.
 */
export function seenFacesOf(panel: Panel, box: Box): SeenFace[] {
  if (panel.outline === undefined) return seenFaces(box);
  const { lengthAxis, widthAxis, thicknessAxis } = panel;
  const [low, high] = box[thicknessAxis];
  const [near, far] = TO_EYE[thicknessAxis] === 1 ? [high, low] : [low, high];
  const corners = panel.outline.map((point) => ({ length: point.alongLengthUm, width: point.alongWidthUm }));
  const sides = corners.flatMap((from, index): { face: SeenFace; towards: number }[] => {
    const to = corners[(index + 1) % corners.length]!;
    // Counter-clockwise, so the outside is on the right of each side.
    const [alongLength, alongWidth] = [to.width - from.width, from.length - to.length];
    if (alongLength * TO_EYE[lengthAxis] + alongWidth * TO_EYE[widthAxis] <= 0) return [];
    const square = Math.abs(alongLength) > Math.abs(alongWidth) ? lengthAxis : widthAxis;
    const picture = [
      spot(panel, box, from, near),
      spot(panel, box, to, near),
      spot(panel, box, to, far),
      spot(panel, box, from, far),
    ];
    const towards =
      (from.length + to.length) * TO_EYE[lengthAxis] + (from.width + to.width) * TO_EYE[widthAxis];
    return [{ face: { corners: picture, tone: TONE[square] }, towards }];
  });
  sides.sort((a, b) => a.towards - b.towards);
  const broad = {
    corners: corners.map((corner) => spot(panel, box, corner, near)),
    tone: TONE[thicknessAxis],
  };
  return [...sides.map(({ face }) => face), broad];
}
