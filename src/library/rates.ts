import { errorFinding, unknownWord } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import { type Rates, type WorkKind, type WorkRate, workKinds, workUnits } from '../model/rates.ts';
import type { LibraryFiles } from './libraryFiles.ts';
import { type RatesFile, ratesFile, timeMs } from './ratesFile.ts';

/** A percentage with at most two decimals, in hundredths of a percent. */
function hundredths<C extends object>(reader: FieldReader, container: C, key: keyof C & string): number {
  const written = container[key] as number | undefined;
  if (written === undefined) return 0;
  const value = Math.round(written * 100);
  if (Math.abs(value - written * 100) > 1e-6) {
    const place = reader.yaml.placeOf(container, key);
    const details = { found: String(written), expected: 'a percentage such as 19 or 7.5' };
    reader.report(errorFinding('wrong-form', `\`${key}\` has more than two decimals.`, place, details));
  }
  return value;
}

function readHour(reader: FieldReader, file: RatesFile, kind: WorkKind): number {
  const own = file[kind]!;
  if (own.hour !== undefined) return reader.priceMinor(own, 'hour');
  if (file.hour !== undefined) return reader.priceMinor(file, 'hour');
  const message = `\`${kind}\` does not say what an hour costs.`;
  const details = { expected: `\`hour\` in \`${kind}\`, or once at the top of the file for all work` };
  reader.report(errorFinding('missing-field', message, reader.yaml.placeOf(file, kind), details));
  return 0;
}

function readWork(
  reader: FieldReader,
  file: RatesFile,
  kind: WorkKind,
  units: readonly string[],
): WorkRate | null {
  const own = file[kind] as Readonly<Record<string, number | string | undefined>> | undefined;
  if (own === undefined) return null;
  const times = workUnits[kind].flatMap((unit): [string, number][] => {
    const written = own[unit];
    return written === undefined ? [] : [[unit, timeMs(written)]];
  });
  const byUnit = kind === 'assembly' ? file.assembly?.units : undefined;
  for (const id of Object.keys(byUnit ?? {})) {
    if (units.includes(id)) continue;
    const place = reader.yaml.placeOfKey(byUnit!, id);
    reader.report(unknownWord(id, 'a unit of this library', units, place));
  }
  const byUnitMs = new Map(Object.entries(byUnit ?? {}).map(([id, written]) => [id, timeMs(written)]));
  const hourMinor = readHour(reader, file, kind);
  return { hourMinor, timesMs: new Map(times), ...(byUnitMs.size === 0 ? {} : { byUnitMs }) };
}

/** `rates.yaml`; undefined when there is none or it cannot be used. `units`: ids of the library's units. */
export function readRates(files: LibraryFiles, units: readonly string[]): Rates | undefined {
  const read = files.read('rates.yaml', ratesFile, 'optional');
  if (read === undefined) return undefined;
  const { reader, value } = read;
  const work = workKinds.flatMap((kind): [WorkKind, WorkRate][] => {
    const rate = readWork(reader, value, kind, units);
    return rate === null ? [] : [[kind, rate]];
  });
  const markUp = value['mark-up'] ?? {};
  return {
    work: new Map(work),
    charges: {
      sheets: value.charge?.sheets ?? 'whole',
      edging: value.charge?.edging ?? 'metres',
      fittings: value.charge?.fittings ?? 'pieces',
    },
    markUp: {
      material: hundredths(reader, markUp, 'material'),
      work: hundredths(reader, markUp, 'work'),
    },
    vat: value.VAT === undefined ? null : hundredths(reader, value, 'VAT'),
    validDays: value['valid days'] ?? null,
    extras: Object.entries(value.extras ?? {}).map(([id, extra]) => ({
      id,
      title: extra.title,
      priceMinor: reader.priceMinor(extra, 'price'),
      for: extra.for,
    })),
  };
}
