import { errorFinding, warningFinding } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Um } from '../model/geometry.ts';
import type { Obstacle, Vehicle } from '../model/library.ts';
import type { LibraryFiles } from './libraryFiles.ts';
import { vehicleFile } from './schemas.ts';

type Span = [number | string, number | string];

function readSpan(reader: FieldReader, box: Record<'x' | 'y' | 'z', Span>, axis: 'x' | 'y' | 'z'): [Um, Um] {
  const span = box[axis];
  const from = reader.lengthUm(span, 0, 'coordinate');
  const to = reader.lengthUm(span, 1, 'coordinate');
  if (from >= to) {
    reader.report(
      errorFinding(
        'bad-extent',
        `\`${axis}\` ends where it begins or before.`,
        reader.yaml.placeOf(box, axis),
        {
          found: `[${span[0]}, ${span[1]}]`,
          expected: 'the smaller figure first',
        },
      ),
    );
  }
  return [from, to];
}

function readObstacles(
  reader: FieldReader,
  boxes: Readonly<Record<string, Record<'x' | 'y' | 'z', Span>>> | undefined,
): Obstacle[] {
  return Object.entries(boxes ?? {}).map(([name, box]) => ({
    name,
    x: readSpan(reader, box, 'x'),
    y: readSpan(reader, box, 'y'),
    z: readSpan(reader, box, 'z'),
  }));
}

function readWidths(
  reader: FieldReader,
  widths: readonly { height: number | string; width: number | string }[],
): Vehicle['widthAtHeight'] {
  const read = widths.map((entry) => ({
    heightUm: reader.lengthUm(entry, 'height', 'allowance'),
    widthUm: reader.lengthUm(entry, 'width', 'size'),
  }));
  for (const [index, entry] of widths.entries()) {
    const before = index === 0 ? -1 : read[index - 1]!.heightUm;
    const height = read[index]!.heightUm;
    const place = reader.yaml.placeOf(entry, 'height');
    if (index === 0 && height !== 0) {
      const message = 'The first width must be the one at the floor.';
      reader.report(
        errorFinding('bad-widths', message, place, { found: String(entry.height), expected: 'height: 0' }),
      );
    } else if (height <= before) {
      const message = 'This height is not above the one before it.';
      reader.report(
        errorFinding('bad-widths', message, place, {
          found: String(entry.height),
          expected: 'heights from the floor up',
        }),
      );
    }
  }
  return read;
}

/** One file of `vehicles/`; undefined when it cannot be used. */
export function readVehicle(files: LibraryFiles, path: string): Vehicle | undefined {
  const read = files.read(path, vehicleFile, 'needed', {
    title: '?',
    'inside length': 1,
    'inside height': 1,
    widths: [{ height: 0, width: 1 }],
  });
  if (read === undefined) return undefined;
  const { value, reader } = read;
  if (value.payload !== undefined && value['overall length'] === undefined) {
    reader.report(
      warningFinding(
        'no-overall-length',
        'The payload is held against the overall length, which is not stated; the inside length is taken and is too short.',
        reader.yaml.placeOf(value, 'payload'),
        { advice: 'Add `overall length`, as the papers of the vehicle have it.' },
      ),
    );
  }
  return {
    id: read.id,
    title: value.title,
    insideLengthUm: reader.lengthUm(value, 'inside length', 'size'),
    insideHeightUm: reader.lengthUm(value, 'inside height', 'size'),
    widthAtHeight: readWidths(reader, value.widths),
    wheelArches: readObstacles(reader, value['wheel arches']),
    doors: readObstacles(reader, value.doors),
    ...(value.obstacles === undefined ? {} : { obstacles: readObstacles(reader, value.obstacles) }),
    overallLengthUm: reader.lengthUm(
      value,
      value['overall length'] === undefined ? 'inside length' : 'overall length',
      'size',
    ),
    payloadKg: value.payload ?? null,
    ...(value['roof bears'] === undefined ? {} : { roofBearsKg: value['roof bears'] }),
  };
}
