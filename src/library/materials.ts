import { errorFinding, shownText, unknownWord, warningFinding } from '../basics/findings.ts';
import { roundDownToTenth, roundUpToTenth } from '../basics/lengths.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Board, Edging, Finish, Fitting, Saw, SheetOffer } from '../model/library.ts';
import { readCautionUses } from './cautions.ts';
import type { LibraryFiles } from './libraryFiles.ts';
import {
  type BoardField,
  boardsFile,
  edgingsFile,
  finishesFile,
  fittingsFile,
  sawsFile,
  sheetsFile,
} from './schemas.ts';
import { readBought } from './suppliers.ts';

/** What a file defines by id, and all its ids, also those of entries that are wrong. */
export interface Defined<T> {
  readonly values: ReadonlyMap<string, T>;
  readonly names: readonly string[];
}

/** Along and across are stated together or not at all. */
function readStiffness(reader: FieldReader, board: BoardField): Pick<Board, 'stiffnessMPa'> {
  const along = board['stiffness along'];
  const across = board['stiffness across'];
  if (along === undefined && across === undefined) return {};
  if (along !== undefined && across !== undefined) return { stiffnessMPa: { along, across } };
  const [given, missing] = along === undefined ? ['across', 'along'] : ['along', 'across'];
  const place = reader.yaml.placeOfAll(board);
  const message = `The stiffness ${given} the grain is stated, but not the one ${missing} it.`;
  reader.report(errorFinding('missing-field', message, place, { expected: `\`stiffness ${missing}\`` }));
  return {};
}

/** `boards.yaml`; undefined when it cannot be used. */
export function readBoards(files: LibraryFiles): Defined<Board> | undefined {
  const read = files.read('boards.yaml', boardsFile, 'needed');
  if (read === undefined) return undefined;
  const boards = new Map<string, Board>();
  for (const [id, board] of Object.entries(read.value)) {
    boards.set(id, {
      id,
      title: board.title,
      core: board.core,
      thicknessUm: read.reader.lengthUm(board, 'thickness', 'size'),
      arealMassKgPerM2: board['areal mass'],
      decoratedFaces: board['decorated faces'],
      ...readStiffness(read.reader, board),
    });
  }
  return { values: boards, names: read.yaml.namesIn(read.value) };
}

/** `finishes.yaml`; undefined when it cannot be used. */
export function readFinishes(files: LibraryFiles): Defined<Finish> | undefined {
  const read = files.read('finishes.yaml', finishesFile, 'needed');
  if (read === undefined) return undefined;
  const finishes = new Map(Object.entries(read.value).map(([id, finish]) => [id, { id, ...finish }]));
  return { values: finishes, names: read.yaml.namesIn(read.value) };
}

/** `edgings.yaml`; undefined when there is none or it cannot be used. */
export function readEdgings(
  files: LibraryFiles,
  finishes: readonly string[] | undefined,
  suppliers: readonly string[],
): Defined<Edging> | undefined {
  const read = files.read('edgings.yaml', edgingsFile, 'optional');
  if (read === undefined) return undefined;
  const { reader, yaml } = read;
  const edgings = new Map<string, Edging>();
  for (const [id, edging] of Object.entries(read.value)) {
    if (finishes !== undefined && !finishes.includes(edging.finish)) {
      const place = yaml.placeOf(edging, 'finish');
      reader.report(unknownWord(edging.finish, 'a finish of this library', finishes, place));
    }
    edgings.set(id, {
      id,
      title: edging.title,
      finish: edging.finish,
      thicknessUm: reader.lengthUm(edging, 'thickness', 'size'),
      widthUm: reader.lengthUm(edging, 'width', 'size'),
      deducted: edging.deducted,
      preMillingUm: reader.lengthUm(edging, 'pre-milling', 'allowance'),
      overlengthUm: reader.lengthUm(edging, 'overlength', 'allowance'),
      massKgPerM: edging['mass per metre'],
      priceMinorPerM: reader.priceMinor(edging, 'price per metre'),
      rollM: edging.roll,
      ...readBought(reader, edging, edging['price per metre'], suppliers),
    });
  }
  return { values: edgings, names: read.yaml.namesIn(read.value) };
}

function readScrew(reader: FieldReader, screw: { length: unknown; through: unknown; into: unknown }) {
  const lengthUm = reader.lengthUm(screw, 'length', 'size');
  const throughUm = reader.lengthUm(screw, 'through', 'size');
  const intoUm = reader.lengthUm(screw, 'into', 'size');
  if (intoUm >= throughUm) {
    const message = 'The thread of a screw holds only in a hole narrower than the one it slides through.';
    const advice = 'Make `into` less than `through`: about 0.7 of the diameter of the screw.';
    reader.report(errorFinding('bad-screw', message, reader.yaml.placeOf(screw, 'into'), { advice }));
  }
  return { lengthUm, throughUm, intoUm };
}

/** `fittings.yaml`; undefined when there is none or it cannot be used. */
export function readFittings(
  files: LibraryFiles,
  cautions: readonly string[],
  suppliers: readonly string[],
): Defined<Fitting> | undefined {
  const read = files.read('fittings.yaml', fittingsFile, 'optional');
  if (read === undefined) return undefined;
  const fittings = new Map<string, Fitting>();
  for (const [id, fitting] of Object.entries(read.value)) {
    const priceMinor = read.reader.priceMinor(fitting, 'price');
    const brings = readCautionUses(read.reader, fitting.cautions, cautions).map(({ caution }) => caution);
    fittings.set(id, {
      id,
      title: fitting.title,
      massKg: fitting.mass,
      priceMinor,
      pack: fitting.pack,
      ...readBought(read.reader, fitting, fitting.price, suppliers),
      ...(fitting.where === undefined ? {} : { where: fitting.where }),
      ...(fitting.fitted === undefined ? {} : { fitted: fitting.fitted }),
      ...(brings.length === 0 ? {} : { cautions: brings }),
      ...(fitting.screw === undefined ? {} : { screw: readScrew(read.reader, fitting.screw) }),
    });
  }
  return { values: fittings, names: read.yaml.namesIn(read.value) };
}

/** `sheets.yaml`; sizes rounded down to 0.1 mm, since the outermost hundredths are never used. */
export function readSheets(
  files: LibraryFiles,
  boards: readonly string[] | undefined,
  finishes: Defined<Finish> | undefined,
  suppliers: readonly string[],
): SheetOffer[] | undefined {
  const read = files.read('sheets.yaml', sheetsFile, 'needed');
  if (read === undefined) return undefined;
  const { reader, yaml } = read;
  const seen = new Map<string, number | undefined>();
  return read.value.map((sheet) => {
    const place = yaml.placeOf(sheet, 'id');
    if (seen.has(sheet.id)) {
      const message = `The sheet id \`${sheet.id}\` is used twice; the first is on line ${seen.get(sheet.id)}.`;
      reader.report(errorFinding('duplicate-id', message, place, { advice: 'Give each sheet its own id.' }));
    }
    seen.set(sheet.id, place.line);
    if (boards !== undefined && !boards.includes(sheet.board)) {
      const where = yaml.placeOf(sheet, 'board');
      reader.report(unknownWord(sheet.board, 'a board of this library', boards, where));
    }
    const finish = finishes?.values.get(sheet.finish);
    if (finishes !== undefined && !finishes.names.includes(sheet.finish)) {
      const where = yaml.placeOf(sheet, 'finish');
      reader.report(unknownWord(sheet.finish, 'a finish of this library', finishes.names, where));
    }
    if (finish?.grain === true && sheet.grain === 'none') {
      reader.report(
        errorFinding(
          'grain-unknown',
          `The finish \`${finish.id}\` has a grain, but this sheet does not say along which side it runs.`,
          yaml.placeOf(sheet, 'grain'),
          { found: 'none', expected: 'length or width' },
        ),
      );
    }
    return {
      id: sheet.id,
      board: sheet.board,
      finish: sheet.finish,
      lengthUm: roundDownToTenth(reader.lengthUm(sheet, 'length', 'size')),
      widthUm: roundDownToTenth(reader.lengthUm(sheet, 'width', 'size')),
      grain: sheet.grain,
      priceMinor: reader.priceMinor(sheet, 'price'),
      count: sheet.count ?? null,
      ...(sheet.pack === undefined ? {} : { pack: sheet.pack }),
      ...readBought(reader, sheet, sheet.price, suppliers),
    };
  });
}

type TrimField =
  | number
  | string
  | { left: number | string; right: number | string; near: number | string; far: number | string };

function readTrim(reader: FieldReader, saw: { trim: TrimField }): Saw['trimUm'] {
  const { trim } = saw;
  if (typeof trim !== 'object') {
    const all = roundUpToTenth(reader.lengthUm(saw, 'trim', 'allowance'));
    return { left: all, right: all, near: all, far: all };
  }
  const side = (key: keyof typeof trim) => roundUpToTenth(reader.lengthUm(trim, key, 'allowance'));
  return { left: side('left'), right: side('right'), near: side('near'), far: side('far') };
}

/** `saws.yaml`; kerf and trim rounded up to 0.1 mm, the safe side. */
export function readSaws(files: LibraryFiles): Defined<Saw> | undefined {
  const read = files.read('saws.yaml', sawsFile, 'needed');
  if (read === undefined) return undefined;
  const { reader, yaml } = read;
  const saws = new Map<string, Saw>();
  for (const [id, saw] of Object.entries(read.value)) {
    const kerfUm = roundUpToTenth(reader.lengthUm(saw, 'kerf', 'allowance'));
    if (kerfUm === 0 || kerfUm > 20_000) {
      const message = `The kerf of \`${shownText(saw.title)}\` is ${kerfUm === 0 ? '0' : 'more than 20 mm'}.`;
      const advice = 'The kerf is the width that the blade takes away, about 3 mm. Measure it in a test cut.';
      reader.report(warningFinding('odd-kerf', message, yaml.placeOf(saw, 'kerf'), { advice }));
    }
    const least = saw['least offcut'];
    saws.set(id, {
      id,
      name: saw.title,
      kerfUm,
      trimUm: readTrim(reader, saw),
      firstCut: saw['first cut'],
      turns: saw.turns ?? null,
      smallestPartUm: reader.lengthUm(saw, 'smallest part', 'allowance'),
      leastOffcut: {
        lengthUm: reader.lengthUm(least, 'length', 'size'),
        widthUm: reader.lengthUm(least, 'width', 'size'),
      },
      longestCutUm: reader.optionalLengthUm(saw, 'longest cut', 'size'),
      cuttingHeightUm: reader.optionalLengthUm(saw, 'cutting height', 'size'),
      ...(saw['guided by'] === undefined ? {} : { guidedBy: saw['guided by'] }),
    });
  }
  return { values: saws, names: read.yaml.namesIn(read.value) };
}
