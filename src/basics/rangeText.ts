import { umToMm } from './lengths.ts';
import { lengthFromText } from './lengthText.ts';
import { partsOfSetting } from './settingText.ts';

/** How a range of values is written, for help and errors. */
export const RANGE_EXPECTED =
  "a unit's parameter with its limits as in 'base cupboard.width=380..420', or a choice as in bed_width=1200..1300; a step may follow, as in /5";

/** Limits of a number as a person wrote them, in mm where it is a length. */
export interface WrittenRange {
  /** What stands before the `=`, without spaces around it. */
  readonly name: string;
  /** The unit before the point; null for a choice of the layout. */
  readonly of: string | null;
  readonly parameter: string;
  readonly least: number;
  readonly most: number;
  /** 1 where none is written. */
  readonly step: number;
}

function figure(text: string): number | undefined {
  const um = lengthFromText(text);
  return um === undefined ? undefined : umToMm(um);
}

/** Every way to part a text in two at a slash: a fraction of an inch has one too. */
function atSlashes(text: string): (readonly [before: string, after: string])[] {
  return [...text.matchAll(/\//g)].map(({ index }) => [text.slice(0, index), text.slice(index + 1)]);
}

/** Reads `UNIT.PARAMETER=LEAST..MOST/STEP`; undefined when it is not written so, or its limits are the wrong way round. */
export function rangeFromText(text: string): WrittenRange | undefined {
  const parts = partsOfSetting(text);
  const ends = parts?.value.split('..');
  if (parts === undefined || ends?.length !== 2) return undefined;
  const least = figure(ends[0]!);
  const [most, step] = ([[ends[1]!, '1'], ...atSlashes(ends[1]!)] as const)
    .map(([before, after]) => [figure(before), figure(after)] as const)
    .find(([before, after]) => before !== undefined && after !== undefined) ?? [undefined, undefined];
  if (least === undefined || most === undefined || step === undefined || step <= 0 || least > most)
    return undefined;
  const { of, name } = parts;
  return { name: of === null ? name : `${of}.${name}`, of, parameter: name, least, most, step };
}

/** More values of one number are hardly meant. */
const MOST_VALUES = 2000;

/** What is wrong with a range that has too many values. */
export const TOO_MANY_VALUES = `It must have at most ${MOST_VALUES} values; a larger step has fewer.`;

/** The values of a range, rising: whole steps of it from its least value on; null where there are too many. */
export function valuesOfRange({
  least,
  most,
  step,
}: Pick<WrittenRange, 'least' | 'most' | 'step'>): number[] | null {
  const count = Math.floor((most - least) / step + 1e-9) + 1;
  if (count > MOST_VALUES) return null;
  return Array.from({ length: count }, (_, index) => Math.round((least + index * step) * 1000) / 1000);
}
