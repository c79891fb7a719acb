import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  LineCounter,
  type Node,
  type Pair,
  parseDocument,
} from 'yaml';
import type { Finding, Place } from '../model/finding.ts';
import { errorFinding, ordinal, shownText } from './findings.ts';
import { composed, unreadablePart, withoutHeapedMarks, withoutUnseen } from './visibleText.ts';
import { yamlSyntaxFinding } from './yamlSyntax.ts';

/** Largest file that is read, in UTF-16 units (about bytes): what people write is a thousand times smaller. */
export const LARGEST_FILE = 5_000_000;
/** Deepest nesting that is read. Deeper files are not written by people and would exhaust the parser. */
const DEEPEST = 60;
const LONGEST_BLOCK_PREFIX = 200;
const FIELD_JOINT = ' › ';

/** What `"\ud800"` gives: it cannot be written to any file. */
const HALF_CHARACTER = /\p{Cs}/u;

interface Spot {
  /** Where the key stands, or the value in a list. */
  readonly key: Place;
  /** Where the text of the value begins, behind an opening quote. */
  readonly value: Place;
}

/**
 * A YAML file as plain objects (without prototypes), lists, texts, numbers, booleans and nulls, together with the place
 * of everything in it. Places are kept by object, so they stay right when a wrong entry is dropped.
 */
export class PlacedYaml {
  readonly file: string;
  readonly value: unknown;
  private readonly spots: ReadonlyMap<object, Map<string, Spot> | Spot[]>;
  private readonly own: ReadonlyMap<object, Place>;
  private readonly dropped = new Map<object, string[]>();

  constructor(
    file: string,
    value: unknown,
    spots: ReadonlyMap<object, Map<string, Spot> | Spot[]>,
    own: ReadonlyMap<object, Place>,
  ) {
    this.file = file;
    this.value = value;
    this.spots = spots;
    this.own = own;
  }

  private spot(container: object, key: string | number): Spot | undefined {
    const spots = this.spots.get(container);
    return Array.isArray(spots) ? spots[Number(key)] : spots?.get(String(key));
  }

  /** Whether the file itself has a value there, rather than something that stands in for it. */
  isWritten(container: object, key: string | number): boolean {
    return this.spot(container, key) !== undefined;
  }

  /** Where the text of a value begins; the container's place when there is no such value. */
  placeOf(container: object, key: string | number): Place {
    return this.spot(container, key)?.value ?? this.placeOfAll(container);
  }

  /** Where the name of a field stands; for an entry of a list, where the entry begins. */
  placeOfKey(container: object, key: string | number): Place {
    return this.spot(container, key)?.key ?? this.placeOfAll(container);
  }

  /** Where an object or a list stands as a whole: at its name, or at the top of the file. */
  placeOfAll(container: object): Place {
    return this.own.get(container) ?? { file: this.file, line: 1, column: 1 };
  }

  /** Names of all fields that an object has in the file, also of those that were wrong and have been dropped. */
  namesIn(container: object): string[] {
    return [...Object.keys(container), ...(this.dropped.get(container) ?? [])];
  }

  /** Takes an entry out of an object or list that came from this file. */
  drop(container: object, key: string | number): void {
    const spots = this.spots.get(container);
    if (Array.isArray(container)) {
      container.splice(Number(key), 1);
      if (Array.isArray(spots)) spots.splice(Number(key), 1);
      return;
    }
    this.dropped.set(container, [...(this.dropped.get(container) ?? []), String(key)]);
    delete (container as Record<string, unknown>)[String(key)];
    if (spots instanceof Map) spots.delete(String(key));
  }
}

/** Turns the parser's tree into plain values, and collects what YAML allows but this program does not. */
class Placer {
  readonly findings: Finding[] = [];
  readonly spots = new Map<object, Map<string, Spot> | Spot[]>();
  readonly own = new Map<object, Place>();
  private readonly file: string;
  private readonly lines: LineCounter;

  constructor(file: string, lines: LineCounter) {
    this.file = file;
    this.lines = lines;
  }

  private placeAt(offset: number, field: string): Place {
    const { line, col } = this.lines.linePos(offset);
    return {
      file: this.file,
      line: Math.max(1, line),
      column: Math.max(1, col),
      ...(field !== '' && { field }),
    };
  }

  private refuse(code: string, message: string, place: Place, advice: string): void {
    if (this.findings.length < 50) this.findings.push(errorFinding(code, message, place, { advice }));
  }

  private refuseMarks(node: Node, place: Place): void {
    if (isAlias(node) || ('anchor' in node && node.anchor !== undefined)) {
      const mark = isAlias(node) ? `*${node.source}` : `&${String((node as { anchor?: string }).anchor)}`;
      this.refuse(
        'yaml-alias',
        `\`${shownText(mark)}\` is a YAML anchor or alias, which these files do not use.`,
        place,
        'Write the value out in each place. If a text begins with & or *, put it in quotes.',
      );
    }
    if (node.tag !== undefined) {
      this.refuse(
        'yaml-tag',
        `\`${shownText(node.tag)}\` is a YAML tag, which these files do not use.`,
        place,
        'Take it out. If a text begins with !, put it in quotes.',
      );
    }
  }

  /** `key`: where the name of this value stands. */
  value(node: Node | null, key: Place, field: string): { value: unknown; place: Place } {
    if (node === null) return { value: null, place: key };
    const place = node.range == null ? key : this.placeAt(node.range[0], field);
    this.refuseMarks(node, place);
    if (isMap(node))
      return { value: this.object(node.items as Pair<Node, Node | null>[], key, field), place };
    if (isSeq(node)) return { value: this.list(node.items as (Node | null)[], key, field), place };
    if (isScalar(node)) return { value: this.scalar(node.value, place), place: this.textPlace(node, place) };
    return { value: null, place };
  }

  private scalar(value: unknown, place: Place): unknown {
    if (typeof value === 'string' && HALF_CHARACTER.test(value)) {
      const message = 'An escape gives half a character, which is not text.';
      this.refuse('not-text', message, place, 'Write the character itself.');
    }
    if (typeof value === 'string') return this.text(value, place);
    if (typeof value === 'bigint') return Number(value);
    return value === undefined ? null : value;
  }

  /** Texts stand on papers, in file names and on the terminal: nothing in them may be hidden or lie on other lines. */
  private text(value: string, place: Place): string {
    const unreadable = HALF_CHARACTER.test(value) ? undefined : unreadablePart(value);
    if (unreadable === undefined) return composed(value);
    const advice = 'Type the text anew: such characters often come along when it is copied from elsewhere.';
    this.refuse('unreadable-text', `This text holds ${unreadable}.`, place, advice);
    // What is left is checked on, so that one mistake is told once.
    return composed(withoutHeapedMarks(withoutUnseen(value, '', '\n\t')));
  }

  private textPlace(node: Node, place: Place): Place {
    const quoted = isScalar(node) && (node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE');
    return quoted ? { ...place, column: place.column! + 1 } : place;
  }

  private object(pairs: readonly Pair<Node, Node | null>[], key: Place, field: string): object {
    const object = Object.create(null) as Record<string, unknown>;
    const spots = new Map<string, Spot>();
    this.spots.set(object, spots);
    this.own.set(object, key);
    for (const pair of pairs) {
      const offset = pair.key?.range?.[0] ?? pair.value?.range?.[0] ?? 0;
      if (!isScalar(pair.key) || pair.key.value === null) {
        this.refuse(
          'yaml-key',
          'The name of a field must be one word or text.',
          this.placeAt(offset, field),
          'Write `name: value`; a name that begins with a bracket or mark goes in quotes.',
        );
        continue;
      }
      const written =
        typeof pair.key.value === 'string' ? pair.key.value : (pair.key.source ?? String(pair.key.value));
      const shown = shownText(composed(written));
      const within = field === '' ? shown : `${field}${FIELD_JOINT}${shown}`;
      const keyPlace = this.placeAt(offset, within);
      this.refuseMarks(pair.key, keyPlace);
      const name = String(this.scalar(written, keyPlace));
      if (!this.keyIsFine(name, spots, keyPlace)) continue;
      const placed = this.value(pair.value, keyPlace, within);
      object[name] = placed.value;
      spots.set(name, { key: keyPlace, value: placed.place });
    }
    return object;
  }

  private keyIsFine(name: string, spots: ReadonlyMap<string, Spot>, place: Place): boolean {
    const before = spots.get(name);
    if (before !== undefined) {
      this.refuse(
        'duplicate-field',
        `\`${shownText(name)}\` stands here for the second time; the first is on line ${before.key.line}.`,
        place,
        'Keep one of the two.',
      );
      return false;
    }
    if (name === '<<') {
      this.refuse(
        'yaml-merge',
        'Merging with `<<` is not used in these files.',
        place,
        'Write the fields out.',
      );
      return false;
    }
    if (name === '__proto__') {
      this.refuse('bad-name', '`__proto__` cannot be used as a name.', place, 'Choose another name.');
      return false;
    }
    return true;
  }

  private list(items: readonly (Node | null)[], key: Place, field: string): unknown[] {
    const spots: Spot[] = [];
    const list: unknown[] = [];
    this.spots.set(list, spots);
    this.own.set(list, key);
    for (const [index, item] of items.entries()) {
      const name = ordinal(index + 1);
      const within = field === '' ? `${name} entry` : `${field}${FIELD_JOINT}${name}`;
      const offset = item?.range?.[0];
      const start = offset === undefined ? { ...key, field: within } : this.placeAt(offset, within);
      const placed = this.value(item, start, within);
      list.push(placed.value);
      spots.push({ key: start, value: placed.place });
    }
    return list;
  }
}

/** Line of the first place that nests deeper than the parser can bear, or undefined. Brackets in texts count too. */
function lineNestedTooDeep(text: string): number | undefined {
  let line = 0;
  let depth = 0;
  for (const content of text.split('\n')) {
    line++;
    const prefix = /^[\s\-?:]*/.exec(content)![0].length;
    if (prefix > LONGEST_BLOCK_PREFIX) return line;
    for (const character of content.replace(/(?:^|\s)#.*$/, '')) {
      if (character === '[' || character === '{') depth++;
      else if ((character === ']' || character === '}') && depth > 0) depth--;
      if (depth > DEEPEST) return line;
    }
  }
  return undefined;
}

function refuseText(text: string, file: string): Finding | undefined {
  if (text.length > LARGEST_FILE) {
    return errorFinding(
      'file-too-large',
      'The file is larger than 5 MB, so it is not read.',
      { file },
      {
        found: `${(text.length / 1_000_000).toFixed(1)} MB`,
        expected: 'a file that a person wrote, a few hundred kilobytes at most',
      },
    );
  }
  const odd = [text.indexOf('\0'), text.indexOf('\ufffd')].find((offset) => offset >= 0) ?? -1;
  if (odd >= 0) {
    return errorFinding(
      'not-text',
      'The file is not plain text in UTF-8.',
      { file, line: text.slice(0, odd).split('\n').length },
      { advice: 'Save it as UTF-8 text.' },
    );
  }
  const deep = lineNestedTooDeep(text);
  if (deep !== undefined) {
    return errorFinding(
      'nested-too-deep',
      'Brackets or list marks are nested too deep here.',
      { file, line: deep },
      {
        expected: `at most ${DEEPEST} levels`,
      },
    );
  }
  return undefined;
}

/**
 * Reads one YAML text (YAML 1.2, one document, no anchors, aliases, tags or merges, no field twice) with the place of
 * everything in it. `file` is the name to show. Gives either the file or what is wrong with it, all at once.
 */
export function readPlacedYaml(
  text: string,
  file: string,
):
  | { readonly yaml: PlacedYaml; readonly findings: readonly Finding[] }
  | { readonly yaml: undefined; readonly findings: readonly Finding[] } {
  const refused = refuseText(text, file);
  if (refused !== undefined) return { yaml: undefined, findings: [refused] };
  const lines = new LineCounter();
  // Fields that stand twice are found below in linear time; the parser's own check compares every pair.
  const options = { lineCounter: lines, uniqueKeys: false, prettyErrors: false, logLevel: 'error' } as const;
  let document: Document.Parsed;
  try {
    document = parseDocument(text, options);
  } catch (problem) {
    // The parser ran out of stack: the nesting check lets nothing through that is known to do so.
    if (!(problem instanceof RangeError)) throw problem;
    return {
      yaml: undefined,
      findings: [errorFinding('nested-too-deep', 'The file is nested too deep.', { file })],
    };
  }
  if (document.errors.length > 0) {
    // Further errors on a line mostly follow from its first.
    const findings = new Map<number | undefined, Finding>();
    for (const error of document.errors.slice(0, 200)) {
      const finding = yamlSyntaxFinding(error, text, file, lines);
      if (!findings.has(finding.place?.line)) findings.set(finding.place?.line, finding);
    }
    return { yaml: undefined, findings: [...findings.values()].slice(0, 5) };
  }
  const placer = new Placer(file, lines);
  const { value } = placer.value(document.contents as Node | null, { file, line: 1, column: 1 }, '');
  return { yaml: new PlacedYaml(file, value, placer.spots, placer.own), findings: placer.findings };
}
