import type { StickerWords } from './stickerWords.ts';

const steps = {
  shape: 'Form schneiden',
  edge: 'Kante',
  groove: 'nuten',
  drill: 'bohren',
  cutOut: 'ausschneiden',
  assemble: 'montieren',
} as const;

/** The words of the labels in German. */
export const stickersDe: StickerWords = {
  title: (job) => `Etiketten: ${job}`,
  page: (job, page, pages) => `Etiketten zu ${job}, Seite ${page} von ${pages}`,
  finished: (size) => `fertig ${size}`,
  cut: (size) => `gesägt ${size}`,
  piece: (piece, of) => `Stück ${piece} von ${of}`,
  edges: { length1: 'L1', length2: 'L2', width1: 'B1', width2: 'B2' },
  noEdging: 'ohne Kante',
  next: (todo) => `weiter: ${todo.map((step) => steps[step]).join(' → ')}`,
  offcut: 'REST',
  grain: (size) => `Maserung längs ${size}`,
  noGrain: 'ohne Maserung',
  from: (job, plan) => `aus ${job}, Schnittplan ${plan}`,
  fromPanel: (job, number) => `aus ${job}, Ausschnitt von Teil ${number}`,
  sheet: (copy, of) => `Platte ${copy} von ${of}`,
  date: 'eingelagert am',
};
