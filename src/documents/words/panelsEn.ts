import type { PanelWords } from '../../drawing/index.ts';

/** The words of drawings of single panels in English. */
export const panelsEn: PanelWords = {
  heading: 'Drilling',
  document: 'Drilling',
  measured: 'Measured',
  fromOrigin: (units) =>
    `from the small circle, a corner of the finished panel; ${units === 'mm' ? 'mm' : 'inches'}. Dashed: from the underside, or in an edge`,
  finished: (size) => `finished ${size}`,
  count: (count) => (count === 1 ? '1 panel' : `${count} panels`),
  faceUp: (face) => `up: its ${face} face`,
  through: (diameter) => `Ø ${diameter} right through`,
  deep: (diameter, depth) => `Ø ${diameter}, ${depth} deep`,
  inEdge: (diameter, depth, below) =>
    `Ø ${diameter}, ${depth} deep into the edge, middle ${below} below the upper face`,
  fromBelow: 'from the underside',
  groove: (depth, holds) => `groove ${depth} deep for the ${holds}`,
  marksFromSawn: (edge, outside) =>
    `Mark out before cutting the ${edge} edge along the wall: as sawn, that edge lies ${outside} outside of the circle.`,
  noRoom: 'There is no room for all distances; drilling.csv has them.',
  title: (job, page, pages) => `${job}: panels to be drilled, page ${page} of ${pages}`,
  description: (panels) => `Outline, openings, grooves and holes with distances of ${panels.join('; ')}.`,
};
