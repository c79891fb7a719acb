import { unknownWord } from '../basics/findings.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import { CAUTIONS, type CautionText } from '../model/cautions.ts';
import type { CautionUse } from '../model/library.ts';
import type { ReadFile } from './libraryFiles.ts';
import type { CautionUsesField, LibraryFile } from './schemas.ts';

/** The library's own texts of cautions by id, in the order of its file. */
export function readCautionTexts(head: ReadFile<LibraryFile> | undefined): ReadonlyMap<string, CautionText> {
  return new Map(
    Object.entries(head?.value.cautions ?? {}).map(([id, { title, text }]) => [
      id,
      { title, points: typeof text === 'string' ? [text] : text },
    ]),
  );
}

/** Every word that `cautions` may hold: those of the program, and the library's own. */
export function cautionWords(head: ReadFile<LibraryFile> | undefined): readonly string[] {
  const own = head?.value.cautions === undefined ? [] : head.yaml.namesIn(head.value.cautions);
  return [...new Set([...CAUTIONS, ...own])];
}

/** The cautions that something brings: a list of words, or a block that says when each applies. */
export function readCautionUses(
  reader: FieldReader,
  written: CautionUsesField | undefined,
  known: readonly string[],
): CautionUse[] {
  if (written === undefined) return [];
  const uses: CautionUse[] = Array.isArray(written)
    ? written.map((caution, index) => ({ caution, when: null, place: reader.yaml.placeOf(written, index) }))
    : Object.keys(written).map((caution) => ({
        caution,
        when: written[caution] === true ? null : reader.formula(written, caution),
        place: reader.yaml.placeOfKey(written, caution),
      }));
  for (const { caution, place } of uses) {
    if (!known.includes(caution)) reader.report(unknownWord(caution, 'a caution', known, place));
  }
  return uses;
}
