import { type Command, InvalidArgumentError, Option } from 'commander';
import type { PageSize, Units } from '../../src/pipeline/makePapers.ts';
import {
  type StickerFormat,
  stickerFormatInWords,
  stickerFormats,
} from '../../src/pipeline/stickerFormats.ts';
import { bookPageSizes, lengthUnits, paperLanguages } from '../papers/kinds.ts';
import { kindsOfPapers, oneOf } from './paperOptions.ts';

/** What every command is asked for that searches for plans and writes their papers. */
export interface RunOptions {
  readonly out: string;
  readonly seed: number;
  readonly time?: number;
  readonly work?: number;
  readonly threads?: number;
  readonly json?: true;
  readonly replace?: true;
  /** Kinds of papers beside the usual ones. */
  readonly papers: readonly string[];
  readonly language: string;
  readonly lengths: Units;
  /** Of the job book. */
  readonly page: PageSize;
  readonly labelFormat?: StickerFormat;
  /** Label of the first sheet to begin with, from 1. */
  readonly firstLabel?: number;
}

/** Reads a whole number of a range. */
export function wholeNumber(least: number, most: number): (text: string) => number {
  return (text) => {
    const value = /^\d{1,16}$/.test(text) ? Number(text) : Number.NaN;
    if (!(value >= least && value <= most)) {
      throw new InvalidArgumentError(`It must be a whole number from ${least} to ${most}.`);
    }
    return value;
  };
}

/** Reads seconds above 0. */
export function seconds(text: string): number {
  const value = /^\d{1,6}(?:\.\d{1,6})?$/.test(text) ? Number(text) : Number.NaN;
  if (!(value > 0 && value <= 100_000)) {
    throw new InvalidArgumentError('It must be a number of seconds above 0, up to 100000.');
  }
  return value;
}

/** What labels are printed on unless something else is asked for. */
export const usualLabelFormat = [...stickerFormats.values()][0]!;

/** The formats of labels, a line each, for the help. */
export const labelFormatsInWords = [...stickerFormats.values()]
  .map((format) => `  ${format.name.padEnd(11)}  ${stickerFormatInWords(format)}`)
  .join('\n');

/** Where papers go, and how long and by which seed is searched. */
export function withSearchOptions(command: Command): Command {
  return command
    .option('--out <DIR>', 'folder in which each job gets its folder', 'out')
    .option('--seed <N>', 'start of the random search', wholeNumber(0, 4_294_967_295), 1)
    .option('--time <SECONDS>', 'end the search after this time', seconds)
    .option('--work <N>', 'end the search after this many moves', wholeNumber(0, 1_000_000_000_000))
    .option('--threads <N>', 'use at most N threads; the papers are the same', wholeNumber(1, 256));
}

/** Which papers, and how they are wanted. */
export function withPaperOptions(command: Command): Command {
  return command
    .addOption(
      new Option('--papers <KINDS>', 'more papers: words from the list below, with commas')
        .argParser(kindsOfPapers)
        .default([], 'none'),
    )
    .option('--language <TAG>', 'language of the papers: en or de', oneOf(paperLanguages), 'en')
    .option('--lengths <UNIT>', 'print lengths in mm, inches or inches-32', oneOf(lengthUnits), 'mm')
    .option('--page <SIZE>', 'paper of the job book: a4 or a3', oneOf(bookPageSizes), 'A4')
    .option(
      '--label-format <NAME>',
      `for --papers labels (default: ${usualLabelFormat.name})`,
      (text: string) => oneOf(stickerFormats)(text.replaceAll('×', 'x')),
    )
    .option('--first-label <N>', 'for --papers labels: label to begin with', wholeNumber(1, 1000));
}

/** What is wrong with the options for labels together; null when nothing is. */
export function wrongLabels({ papers, labelFormat, firstLabel }: RunOptions): string | null {
  if (!papers.includes('labels')) {
    if (labelFormat !== undefined) return '--label-format goes with --papers labels';
    return firstLabel === undefined ? null : '--first-label goes with --papers labels';
  }
  const { columns, rows } = labelFormat ?? usualLabelFormat;
  if ((firstLabel ?? 1) <= columns * rows) return null;
  return columns * rows === 1
    ? '--first-label is for sheets; a roll goes on where it is'
    : `--first-label must be at most ${columns * rows}: the sheet has ${columns} × ${rows} labels`;
}
