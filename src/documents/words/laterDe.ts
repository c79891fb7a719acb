import type { LaterWords } from './laterWords.ts';

/** The words of later plans of a job in German. */
export const laterDe: LaterWords = {
  recutTitle: (job, number) => `${job}, Ersatzzuschnitt ${number}`,
  partTitle: (job, part) => `${job}, ${part}. Zuschnitt`,
  spoiled: {
    heading: 'Verdorbene Teile',
    intro:
      'Diese Teile wurden verdorben und werden neu gesägt. Sie behalten Nummer und Etikett; Bohrungen, Kanten und Ausschnitte bleiben, wie sie waren.',
    why: (why) => `Grund: ${why}`,
    columns: ['Nr.', 'Teil', 'Möbel', 'welches', 'Etikett'],
    piece: (piece, of) => `Stück ${piece} von ${of}`,
  },
  sawn: {
    heading: 'Schon gesägt',
    intro: (sheets) =>
      sheets.length === 0
        ? 'Diese Teile des Auftrags sind schon gesägt; die Schnittpläne dieses Buchs enthalten den Rest.'
        : `Diese Teile des Auftrags sind schon gesägt (${sheets.join('; ')}); die Schnittpläne dieses Buchs enthalten den Rest.`,
    rest: 'Kanten, Ausschnitte, Bohrungen und die Seiten der Möbel gelten für alle Teile, auch für diese. Wo seither etwas anders ist, erst ansehen, dann weiterarbeiten.',
    none: 'Von dem, was gesägt ist, enthält der Auftrag nichts mehr.',
    columns: ['Nr.', 'Teil', 'Möbel', 'Anzahl', 'Etiketten', 'seither anders'],
    left: 'Nicht mehr gebraucht',
    leftIntro: 'Diese Teile sind gesägt, und der Auftrag enthält sie nicht mehr.',
    leftColumns: ['Etikett', 'Teil', 'Möbel', 'Sägemaß', 'kommt'],
    kept: 'ins Lager',
    waste: 'zum Abfall',
    differs: {
      board: 'Platte',
      finish: 'Oberfläche',
      thickness: 'Dicke',
      size: 'Fertigmaß',
      'cut size': 'Sägemaß',
      grain: 'Maserung',
      edging: 'Kanten',
      row: 'Reihe der Fronten',
      outline: 'Umriss',
      openings: 'Ausschnitte',
      holes: 'Bohrungen',
    },
  },
};
