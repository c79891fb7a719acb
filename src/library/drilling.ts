import { faceAxis } from '../basics/boxes.ts';
import { errorFinding, unknownWord } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Place } from '../model/finding.ts';
import type { DrillingPattern, HoleDefinition } from '../model/library.ts';
import { type KnownWords, readRepeat } from './definitions.ts';
import type { LibraryFiles } from './libraryFiles.ts';
import type { Defined } from './materials.ts';
import { drillingFile, type HoleField, type PanelField } from './schemas.ts';

/** As written for a hole that goes right through the board. */
const THROUGH = 'through';

/** `drilling.yaml`; undefined when there is none or it cannot be used. */
export function readDrilling(files: LibraryFiles): Defined<DrillingPattern> | undefined {
  const read = files.read('drilling.yaml', drillingFile, 'optional');
  if (read === undefined) return undefined;
  const { reader, yaml } = read;
  const patterns = new Map<string, DrillingPattern>();
  for (const [id, pattern] of Object.entries(read.value)) {
    const holes = Object.entries(pattern.holes).map(([name, hole]) => ({
      name,
      alongUm: reader.lengthUm(hole, 'along', 'coordinate'),
      acrossUm: reader.lengthUm(hole, 'across', 'coordinate'),
      diameterUm: reader.lengthUm(hole, 'diameter', 'size'),
      depthUm: hole.depth === THROUGH ? null : reader.lengthUm(hole, 'depth', 'size'),
    }));
    if (holes.length === 0) {
      const place = yaml.placeOf(pattern, 'holes');
      reader.report(errorFinding('empty-pattern', `The pattern \`${id}\` has no holes.`, place));
    }
    patterns.set(id, { id, title: pattern.title, holes });
  }
  return { values: patterns, names: yaml.namesIn(read.value) };
}

/** The holes of a panel as written. Whether `from` is a broad face is known only once the panel's sides are. */
export function readHoles(
  reader: FieldReader,
  panel: PanelField,
  taken: ReadonlyMap<string, Place>,
  known: KnownWords,
): HoleDefinition[] {
  const { holes, repeat } = panel;
  if (holes === undefined) return [];
  const counter = Object.keys(repeat ?? {})[0];
  const takenHere = new Map(taken);
  if (counter !== undefined) takenHere.set(counter, reader.yaml.placeOfKey(repeat!, counter));
  return Object.entries(holes).flatMap(([name, hole]) => {
    const place = reader.yaml.placeOfKey(holes, name);
    checkAxes(reader, hole, place);
    const drill = readDrill(reader, hole, place, known);
    if (drill === undefined) return [];
    return [
      {
        name,
        place,
        when: reader.optionalFormula(hole, 'when'),
        repeat: readRepeat(reader, hole, takenHere),
        at: {
          x: reader.optionalFormula(hole.at, 'x'),
          y: reader.optionalFormula(hole.at, 'y'),
          z: reader.optionalFormula(hole.at, 'z'),
        },
        from: hole.from,
        drill,
      },
    ];
  });
}

function checkAxes(reader: FieldReader, hole: HoleField, place: Place): void {
  const axes = (['x', 'y', 'z'] as const).filter((axis) => hole.at[axis] !== undefined);
  const depth = faceAxis[hole.from];
  if (axes.length === 2 && !axes.includes(depth)) return;
  const wanted = (['x', 'y', 'z'] as const).filter((axis) => axis !== depth).join(' and ');
  reader.report(
    errorFinding('bad-hole', `A hole drilled from the ${hole.from} stands at ${wanted}.`, place, {
      found: axes.length === 0 ? 'none' : axes.join(', '),
      expected: wanted,
    }),
  );
}

/** What is drilled: a single hole, or a pattern of the library laid in a direction. */
function readDrill(
  reader: FieldReader,
  hole: HoleField,
  place: Place,
  known: KnownWords,
): HoleDefinition['drill'] | undefined {
  const wrong = (message: string, advice: string) => {
    reader.report(errorFinding('bad-hole', message, place, { advice }));
    return undefined;
  };
  if (hole.screw !== undefined) return readScrewHole(reader, hole, hole.screw, known, wrong);
  if (hole.drill === undefined) {
    if (hole.diameter === undefined || hole.depth === undefined) {
      return wrong(
        'A hole needs a diameter and a depth.',
        'Write both, with `depth: through` for a hole right through, or name a screw with `screw` or a pattern with `drill`.',
      );
    }
    if (hole.towards !== undefined) {
      return wrong('A single round hole points nowhere.', 'Take out `towards`.');
    }
    const depth = String(hole.depth).trim() === THROUGH ? null : reader.formula(hole, 'depth');
    return { kind: 'hole', diameter: reader.formula(hole, 'diameter'), depth };
  }
  if (known.drilling !== undefined && !known.drilling.includes(hole.drill)) {
    const at = reader.yaml.placeOf(hole, 'drill');
    reader.report(unknownWord(hole.drill, 'a pattern of drilling.yaml', known.drilling, at));
  }
  if (hole.diameter !== undefined || hole.depth !== undefined) {
    return wrong('The pattern says how wide and deep its holes are.', 'Take out `diameter` and `depth`.');
  }
  if (hole.towards === undefined || faceAxis[hole.towards] === faceAxis[hole.from]) {
    return wrong(
      'A pattern is laid towards an edge of the panel.',
      'Write `towards` with the face that its `along` points to; not the face it is drilled from, nor the one behind.',
    );
  }
  return { kind: 'pattern', pattern: hole.drill, towards: hole.towards };
}

function readScrewHole(
  reader: FieldReader,
  hole: HoleField,
  fitting: string,
  known: KnownWords,
  wrong: (message: string, advice: string) => undefined,
): HoleDefinition['drill'] | undefined {
  if (known.fittings !== undefined && !known.fittings.includes(fitting)) {
    const at = reader.yaml.placeOf(hole, 'screw');
    reader.report(unknownWord(fitting, 'a fitting of this library', known.fittings, at));
  }
  const others = (['diameter', 'depth', 'drill', 'towards'] as const).filter(
    (key) => hole[key] !== undefined,
  );
  if (others.length === 0) return { kind: 'screw', fitting };
  return wrong(
    'The screw says what is drilled for it.',
    `Take out ${others.map((key) => `\`${key}\``).join(' and ')}.`,
  );
}
