import { errorFinding, listWords, unknownWord } from '../basics/findings.ts';
import { printMmShort } from '../basics/lengths.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Place } from '../model/finding.ts';
import type { Edging, Library } from '../model/library.ts';
import type { RoleChoice } from '../model/order.ts';
import type { OrderFile, RoleChangeField, RoleField } from './schema.ts';

/** Edgings of a finish that cover a board, in the library's order. */
function fittingEdgings(library: Library, finish: string, thicknessUm: number): Edging[] {
  return [...library.edgings.values()].filter(
    (each) => each.finish === finish && each.widthUm >= thicknessUm,
  );
}

/** Whether the board can be bought in the finish; says in which finishes it can when not. */
function checkBuyable(reader: FieldReader, field: RoleField, library: Library, written: object): void {
  const offers = library.sheets.filter((sheet) => sheet.board === field.board);
  if (offers.some((sheet) => sheet.finish === field.finish)) return;
  const finishes = [...new Set(offers.map((sheet) => sheet.finish))];
  const boards = [
    ...new Set(library.sheets.filter((sheet) => sheet.finish === field.finish).map((sheet) => sheet.board)),
  ];
  reader.report(
    errorFinding(
      'not-sold',
      `The board \`${field.board}\` is not sold in the finish \`${field.finish}\`.`,
      placeOfEither(reader, written, 'finish', 'board'),
      {
        found: field.finish,
        expected: finishes.length === 0 ? 'no sheet of this board is sold at all' : listWords(finishes),
        advice: boards.length === 0 ? undefined : `\`${field.finish}\` is sold on ${listWords(boards)}.`,
      },
    ),
  );
}

/** The edging as chosen, or the first of the finish that covers the board; null for raw edges. */
function readEdging(
  reader: FieldReader,
  field: RoleField,
  name: string,
  library: Library,
  written: object,
): string | null {
  if (field.edging === 'none') return null;
  const { thicknessUm } = library.boards.get(field.board)!;
  const thickness = `${printMmShort(thicknessUm)} mm`;
  if (field.edging === undefined) {
    const edging = fittingEdgings(library, field.finish, thicknessUm)[0];
    if (edging !== undefined) return edging.id;
    reader.report(
      errorFinding(
        'no-edging',
        `No edging of the finish \`${field.finish}\` is wide enough for \`${field.board}\` (${thickness}), used as ${name}.`,
        placeOfEither(reader, written, 'finish', 'board'),
        { advice: 'Name an edging, or write `edging: none` for raw edges.' },
      ),
    );
    return null;
  }
  const edging = library.edgings.get(field.edging);
  const place = placeOfEither(reader, written, 'edging', 'board');
  if (edging === undefined) {
    const known = [...library.edgings.keys(), 'none'];
    reader.report(unknownWord(field.edging, 'an edging of this library', known, place));
  } else if (edging.widthUm < thicknessUm) {
    const fitting = fittingEdgings(library, field.finish, thicknessUm).map((each) => each.id);
    reader.report(
      errorFinding('edging-too-narrow', `The edging \`${edging.id}\` does not cover the board.`, place, {
        found: `${printMmShort(edging.widthUm)} mm wide on a board of ${thickness}`,
        expected: listWords([...fitting, 'none']),
      }),
    );
  }
  return field.edging;
}

/** Where a field of a role stands; where it is left out, the one that made it wrong. */
function placeOfEither(reader: FieldReader, written: object, field: string, other: string): Place {
  const { yaml } = reader;
  return yaml.placeOf(written, yaml.isWritten(written, field) ? field : other);
}

/** One role; `written` is what of it stands in the reader's file, where the rest comes from a file below. */
function readRole(
  reader: FieldReader,
  field: RoleField,
  name: string,
  library: Library,
  written: object = field,
): RoleChoice {
  const { yaml } = reader;
  const boardKnown = library.boards.has(field.board);
  const finishKnown = library.finishes.has(field.finish);
  if (!boardKnown) {
    const known = library.boards.keys();
    reader.report(unknownWord(field.board, 'a board of this library', known, yaml.placeOf(written, 'board')));
  }
  if (!finishKnown) {
    const known = library.finishes.keys();
    reader.report(
      unknownWord(field.finish, 'a finish of this library', known, yaml.placeOf(written, 'finish')),
    );
  }
  if (boardKnown && finishKnown) checkBuyable(reader, field, library, written);
  const edging = boardKnown && finishKnown ? readEdging(reader, field, name, library, written) : null;
  return { board: field.board, finish: field.finish, edging, place: yaml.placeOfAll(written) };
}

/**
 * A role as it is with what a file on top says of it. An edging that is named goes with its board and finish: with
 * others the one that fits is taken, but raw edges stay raw.
 */
function withRoleChange(below: RoleField, change: RoleChangeField): RoleField {
  const sameSheet = change.board === undefined && change.finish === undefined;
  const edging = change.edging ?? (sameSheet || below.edging === 'none' ? below.edging : undefined);
  return {
    board: change.board ?? below.board,
    finish: change.finish ?? below.finish,
    ...(edging === undefined ? {} : { edging }),
  };
}

/** Roles of a file that stands on another: `roles` and `fields`, those of the file below, become those with it. */
export function changeRoles(
  reader: FieldReader,
  changes: Readonly<Record<string, RoleChangeField>>,
  library: Library,
  roles: Map<string, RoleChoice>,
  fields: Map<string, RoleField>,
): void {
  for (const [name, change] of Object.entries(changes)) {
    if (!library.roles.has(name)) {
      const place = reader.yaml.placeOfKey(changes, name);
      reader.report(unknownWord(name, 'a role of this library', library.roles.keys(), place));
      continue;
    }
    const below = fields.get(name);
    // A role that is missing or wrong below is told there.
    if (below === undefined) continue;
    const field = withRoleChange(below, change);
    fields.set(name, field);
    roles.set(name, readRole(reader, field, name, library, change));
  }
}

/** Board, finish and edging by role: every role of the library, and no other. */
export function readRoles(
  reader: FieldReader,
  fields: Readonly<Record<string, RoleField>>,
  library: Library,
): Map<string, RoleChoice> {
  const roles = new Map<string, RoleChoice>();
  const written = reader.yaml.namesIn(fields);
  /** Roles that are missing only because their name is misspelt, which is reported under the wrong name. */
  const misspelt = new Set<string>();
  for (const [name, field] of Object.entries(fields)) {
    if (!library.roles.has(name)) {
      const free = [...library.roles.keys()].filter((role) => !written.includes(role));
      const known = free.length > 0 ? free : library.roles.keys();
      const finding = unknownWord(
        name,
        'a role of this library',
        known,
        reader.yaml.placeOfKey(fields, name),
      );
      reader.report(finding);
      if (finding.nearest !== undefined) misspelt.add(finding.nearest);
      continue;
    }
    roles.set(name, readRole(reader, field, name, library));
  }
  for (const [name, purpose] of library.roles) {
    if (written.includes(name) || misspelt.has(name)) continue;
    reader.report(
      errorFinding(
        'missing-role',
        `The role \`${name}\` (${purpose}) has no board.`,
        reader.yaml.placeOfAll(fields),
        {
          advice: `Add a line such as ${name}: { board: …, finish: … }`,
        },
      ),
    );
  }
  return roles;
}

/** Roles whose panels share no sheet with other orders; undefined for none. */
export function readOwnSheets(
  reader: FieldReader,
  value: OrderFile,
  library: Library,
): readonly string[] | undefined {
  const written = value['own sheets'];
  if (written === undefined) return undefined;
  const roles = [...library.roles.keys()];
  if (written === 'all') return roles;
  written.forEach((role, index) => {
    if (library.roles.has(role)) return;
    const place = reader.yaml.placeOf(written, index);
    reader.report(unknownWord(role, 'a role of this library', roles, place, 'Write `all` for every role.'));
  });
  return written;
}
