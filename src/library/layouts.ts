import { unknownWord } from '../basics/findings.ts';
import type { Place } from '../model/finding.ts';
import type { LayoutDefinition } from '../model/library.ts';
import { readCautionUses } from './cautions.ts';
import {
  checkRepeatedNames,
  type KnownWords,
  readMusts,
  readNames,
  readParameters,
  readUnitUse,
} from './definitions.ts';
import type { LibraryFiles } from './libraryFiles.ts';
import { layoutFile } from './schemas.ts';

/** One file of `layouts/`; undefined when it cannot be used. */
export function readLayout(
  files: LibraryFiles,
  path: string,
  known: KnownWords,
): LayoutDefinition | undefined {
  const read = files.read(path, layoutFile, 'needed', { title: '?', vehicles: ['x'], units: {} });
  if (read === undefined) return undefined;
  const { value, reader, yaml } = read;
  const vehicles = files.idsIn('vehicles');
  for (const [index, vehicle] of value.vehicles.entries()) {
    if (vehicles.includes(vehicle) || !yaml.isWritten(value.vehicles, index)) continue;
    reader.report(
      unknownWord(vehicle, `a ${known.place} of this library`, vehicles, yaml.placeOf(value.vehicles, index)),
    );
  }
  const taken = new Map<string, Place>();
  const choices = readParameters(reader, value.choices, taken);
  const names = readNames(reader, value.names, taken);
  checkRepeatedNames(reader, value.units);
  return {
    id: read.id,
    title: value.title,
    file: yaml.file,
    vehicles: value.vehicles,
    choices,
    names,
    units: Object.entries(value.units).map(([name, use]) =>
      readUnitUse(reader, value.units, name, use.facing, taken, known),
    ),
    ...(value.seats === undefined ? {} : { seats: reader.formula(value, 'seats') }),
    ...(value.persons === undefined ? {} : { persons: reader.formula(value, 'persons') }),
    ...(value['sleeping places'] === undefined
      ? {}
      : { sleepingPlaces: reader.formula(value, 'sleeping places') }),
    cautions: readCautionUses(reader, value.cautions, known.cautions),
    musts: readMusts(reader, value.musts),
  };
}
