import { composed } from './visibleText.ts';

/** How a setting is written, for help and errors. */
export const SETTING_EXPECTED =
  "a choice as in bed_width=1300, a unit's parameter as in 'base cupboard.width=400', or a role as in front.finish=slate";

/**
 * A setting in its parts: what stands before the last point (a unit or a role; null for a choice), the name of what is
 * set, and its value as written. Undefined when it is not written as a setting.
 */
export function partsOfSetting(
  written: string,
): { readonly of: string | null; readonly name: string; readonly value: string } | undefined {
  const text = composed(written);
  const equals = text.indexOf('=');
  if (equals < 1) return undefined;
  const left = text.slice(0, equals).trim();
  const value = text.slice(equals + 1).trim();
  const point = left.lastIndexOf('.');
  const of = point < 0 ? null : left.slice(0, point).trim();
  const name = left.slice(point + 1).trim();
  if (name === '' || value === '' || of === '' || text.length > 1000) return undefined;
  return { of, name, value };
}
