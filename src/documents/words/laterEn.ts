import type { LaterWords } from './laterWords.ts';

/** The words of later plans of a job in English. */
export const laterEn: LaterWords = {
  recutTitle: (job, number) => `${job}, recut ${number}`,
  partTitle: (job, part) => `${job}, part ${part}`,
  spoiled: {
    heading: 'Spoiled panels',
    intro:
      'These panels were spoiled and are cut anew. They keep their numbers and labels; holes, edging and openings are as before.',
    why: (why) => `Why: ${why}`,
    columns: ['no.', 'panel', 'unit', 'which', 'label'],
    piece: (piece, of) => `piece ${piece} of ${of}`,
  },
  sawn: {
    heading: 'Already sawn',
    intro: (sheets) =>
      sheets.length === 0
        ? 'These panels of the order have been sawn already; the cut plans of this book have the rest.'
        : `These panels of the order have been sawn already (${sheets.join('; ')}); the cut plans of this book have the rest.`,
    rest: 'Edging, cut-outs, drilling and the pages of the units cover all panels, also these. Where something is otherwise since, look before you go on with the panel.',
    none: 'Of what has been sawn the order has nothing any more.',
    columns: ['no.', 'panel', 'unit', 'count', 'labels', 'otherwise since'],
    left: 'No longer needed',
    leftIntro: 'These were sawn, and the order has them no more.',
    leftColumns: ['label', 'panel', 'unit', 'cut size', 'goes to'],
    kept: 'the rack',
    waste: 'waste',
    differs: {
      board: 'board',
      finish: 'finish',
      thickness: 'thickness',
      size: 'finished size',
      'cut size': 'cut size',
      grain: 'grain',
      edging: 'edging',
      row: 'row of fronts',
      outline: 'outline',
      openings: 'openings',
      holes: 'holes',
    },
  },
};
