import { z } from 'zod';
import type { Finding } from '../model/finding.ts';
import { errorFinding, shownText } from './findings.ts';
import type { PlacedYaml } from './placedYaml.ts';

/** The version of every kind of file that this program reads and writes. */
export const FILE_VERSION = 1;

const FIELD = 'file version';

/** The field in which a file that people edit says of which version it is; without it, of the first. */
export const fileVersion = {
  [FIELD]: z.literal(FILE_VERSION, { error: '1' }).optional().meta({
    description: 'of which version the form of this file is; left out: 1',
  }),
} as const;

/** A file of another version, as a finding; `written` is what it says. */
export function otherVersion(what: string, written: unknown, place: Finding['place']): Finding {
  const found = shownText(String(written));
  const isLater = typeof written === 'number' && written > FILE_VERSION;
  return errorFinding(
    'other-version',
    `This is ${what} of version ${found}, and this plywright reads version ${FILE_VERSION}.`,
    place,
    {
      found,
      expected: String(FILE_VERSION),
      advice: isLater
        ? 'Take the plywright that it was written for, or a later one: nothing of the file was read.'
        : 'Correct the version, or take the plywright that the file was written for: nothing of it was read.',
    },
  );
}

/** The only finding about a YAML file that says it is of another version: what it means nobody here can know. */
export function versionFinding(yaml: PlacedYaml): Finding | undefined {
  const { value } = yaml;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  const fields = value as Record<string, unknown>;
  if (!yaml.isWritten(fields, FIELD) || fields[FIELD] === FILE_VERSION) return undefined;
  return otherVersion('a file', fields[FIELD], yaml.placeOf(fields, FIELD));
}
