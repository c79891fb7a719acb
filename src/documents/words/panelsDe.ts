import type { PanelWords } from '../../drawing/index.ts';
import { faceBefore } from './facesDe.ts';

/** The words of drawings of single panels in German. */
export const panelsDe: PanelWords = {
  heading: 'Bohren',
  document: 'Bohren',
  measured: 'Gemessen',
  fromOrigin: (units) =>
    `ab dem kleinen Kreis, einer Ecke des fertigen Teils; ${units === 'mm' ? 'mm' : 'Zoll'}. Gestrichelt: von unten oder in der Kante`,
  finished: (size) => `fertig ${size}`,
  count: (count) => (count === 1 ? '1 Teil' : `${count} Teile`),
  faceUp: (face) => `oben liegt die ${faceBefore(face)} Fläche`,
  through: (diameter) => `Ø ${diameter} durch`,
  deep: (diameter, depth) => `Ø ${diameter}, ${depth} tief`,
  inEdge: (diameter, depth, below) =>
    `Ø ${diameter}, ${depth} tief in die Kante, Mitte ${below} unter der oberen Fläche`,
  fromBelow: 'von der Unterseite',
  groove: (depth, holds) => `Nut ${depth} tief für ${holds}`,
  marksFromSawn: (edge, outside) =>
    `Anreißen, bevor die ${faceBefore(edge)} Kante nach der Wand geschnitten wird: gesägt liegt sie ${outside} außerhalb des Kreises.`,
  noRoom: 'Für alle Abstände ist kein Platz; sie stehen in drilling.csv.',
  title: (job, page, pages) => `${job}: Teile zu bohren, Blatt ${page} von ${pages}`,
  description: (panels) => `Umriss, Ausschnitte, Nuten und Bohrungen mit Abständen von ${panels.join('; ')}.`,
};
