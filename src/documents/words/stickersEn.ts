import type { StickerWords } from './stickerWords.ts';

const steps = {
  shape: 'cut to shape',
  edge: 'edge',
  groove: 'groove',
  drill: 'drill',
  cutOut: 'cut out',
  assemble: 'assemble',
} as const;

/** The words of the labels in English. */
export const stickersEn: StickerWords = {
  title: (job) => `Labels: ${job}`,
  page: (job, page, pages) => `Labels of ${job}, page ${page} of ${pages}`,
  finished: (size) => `finished ${size}`,
  cut: (size) => `cut ${size}`,
  piece: (piece, of) => `piece ${piece} of ${of}`,
  edges: { length1: 'L1', length2: 'L2', width1: 'W1', width2: 'W2' },
  noEdging: 'no edging',
  next: (todo) => `next: ${todo.map((step) => steps[step]).join(' → ')}`,
  offcut: 'OFFCUT',
  grain: (size) => `grain along ${size}`,
  noGrain: 'no grain',
  from: (job, plan) => `from ${job}, cut plan ${plan}`,
  fromPanel: (job, number) => `from ${job}, opening of panel ${number}`,
  sheet: (copy, of) => `sheet ${copy} of ${of}`,
  date: 'put back on',
};
