import { z } from 'zod';
import { ratesFile } from './ratesFile.ts';
import {
  appliancesFile,
  boardsFile,
  drillingFile,
  edgingsFile,
  finishesFile,
  fittingsFile,
  layoutFile,
  libraryFile,
  sawsFile,
  sheetsFile,
  suppliersFile,
  unitFile,
  vehicleFile,
} from './schemas.ts';

const SCHEMAS: readonly (readonly [string, z.ZodType])[] = [
  ['library', libraryFile],
  ['boards', boardsFile],
  ['finishes', finishesFile],
  ['edgings', edgingsFile],
  ['fittings', fittingsFile],
  ['drilling', drillingFile],
  ['appliances', appliancesFile],
  ['sheets', sheetsFile],
  ['suppliers', suppliersFile],
  ['saws', sawsFile],
  ['rates', ratesFile],
  ['vehicle', vehicleFile],
  ['unit', unitFile],
  ['layout', layoutFile],
];

/**
 * The JSON Schemas (draft 2020-12) of a library's files, by file name (`boards.schema.json`), as texts that end in a line
 * break: for editors that help while writing YAML. They are made from the schemas that files are checked with. What
 * cannot be said in one file's shape (words of other files, formulas, ranges of lengths in texts) is not in them.
 */
export function libraryJsonSchemas(): ReadonlyMap<string, string> {
  return new Map(
    SCHEMAS.map(([name, schema]) => [
      `${name}.schema.json`,
      `${JSON.stringify(z.toJSONSchema(schema, { io: 'input' }), null, 2)}\n`,
    ]),
  );
}
