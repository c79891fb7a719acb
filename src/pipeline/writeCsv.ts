/** Tables for other programs, as every list of the line is written. */
export { writeCsv } from '../documents/csv.ts';
