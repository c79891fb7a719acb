import type { PageSize, Units } from '../../src/pipeline/makePapers.ts';

/** Words for `--papers`, with what each stands for; `all` stands for all of them. */
export const paperKinds: Readonly<Record<string, string>> = {
  book: 'the job book: book.html for a tablet, book.pdf for paper',
  dxf: 'dxf/: each panel and each sheet as DXF, for machines',
  labels: 'labels.pdf: labels for panels and offcuts to keep',
  workbook: 'lists.xlsx: all lists in one workbook',
};

/** Languages of papers, for `--language`. */
export const paperLanguages: ReadonlyMap<string, string> = new Map([
  ['en', 'en'],
  ['de', 'de'],
]);

/** Pages of the job book, for `--page`. */
export const bookPageSizes: ReadonlyMap<string, PageSize> = new Map([
  ['a4', 'A4'],
  ['a3', 'A3'],
]);

/** How lengths are printed, for `--lengths`. */
export const lengthUnits: ReadonlyMap<string, Units> = new Map([
  ['mm', 'mm'],
  ['inches', 'inches'],
  ['inches-32', 'inches-32'],
]);
