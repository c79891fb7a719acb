import {
  type AliasEvent,
  EVENT_ID,
  type Event,
  getScalarValue,
  type MappingEvent,
  SCALAR_STYLE,
  type ScalarEvent,
  type SequenceEvent,
} from 'js-yaml';
import type { Finding, Place } from '../model/finding.ts';
import { coreScalar } from './coreScalar.ts';
import { errorFinding, ordinal, shownText } from './findings.ts';
import type { TextLines } from './textLines.ts';
import {
  composed,
  unreadablePart,
  unreadableWords,
  withoutHeapedMarks,
  withoutUnseen,
} from './visibleText.ts';

const FIELD_JOINT = ' › ';
const MOST_FINDINGS = 50;
/** The parser's offset of a name is behind its `&` or `*`. */
const MARK = 1;
/** What `"\ud800"` gives: it cannot be written to any file. */
const HALF_CHARACTER = /\p{Cs}/u;
/** Texts with nothing in them that could be hidden, a half or more than one mark on a letter: nearly all. */
const PLAINLY_READABLE = /^[\t\n\x20-\x7e]*$/;
/** From what was read last to the dash of an empty entry of a list. */
const TO_DASH = /(?:[\s"'\]},:]|#[^\n\r]*)*-/y;

export interface Spot {
  /** Where the key stands, or the value in a list. */
  readonly key: Place;
  /** Where the text of the value begins, behind an opening quote. */
  readonly value: Place;
}

interface Placed {
  readonly value: unknown;
  readonly place: Place;
}

type NodeEvent = AliasEvent | MappingEvent | ScalarEvent | SequenceEvent;

/** Turns the parser's events into plain values, and collects what YAML allows but this program does not. */
export class YamlPlacer {
  readonly findings: Finding[] = [];
  readonly spots = new Map<object, Map<string, Spot> | Spot[]>();
  readonly own = new Map<object, Place>();
  private readonly file: string;
  private readonly text: string;
  private readonly lines: TextLines;
  private readonly events: readonly Event[];
  private next = 0;
  /** Offset behind the last thing that was read and has a place of its own. */
  private readTo = 0;

  constructor(file: string, text: string, lines: TextLines, events: readonly Event[]) {
    this.file = file;
    this.text = text;
    this.lines = lines;
    this.events = events;
  }

  /** The value of the first document; null when nothing is in it. */
  read(): unknown {
    const [document] = this.events;
    if (document?.type !== EVENT_ID.DOCUMENT) return null;
    if (document.explicitStart) this.readTo = this.text.search(/^---/m) + 3;
    this.next = 1;
    const { value } = this.value({ file: this.file, line: 1, column: 1 }, '');
    this.next++;
    return value;
  }

  /** A second document behind the one that was read. */
  secondDocument(): Finding | undefined {
    if (this.next >= this.events.length) return undefined;
    const mark = /^(?:---|\.\.\.)(?=\s|$)/m.exec(this.text.slice(this.readTo));
    const found = mark?.[0] ?? '---';
    return errorFinding(
      'yaml-syntax',
      'A second document begins here.',
      this.placeAt(this.readTo + (mark?.index ?? 0), ''),
      { found, advice: `Keep one per file; take out the line \`${found}\`.` },
    );
  }

  private placeAt(offset: number, field: string): Place {
    return { file: this.file, ...this.lines.placeAt(offset), ...(field !== '' && { field }) };
  }

  private refuse(code: string, message: string, place: Place, advice: string): void {
    if (this.findings.length < MOST_FINDINGS)
      this.findings.push(errorFinding(code, message, place, { advice }));
  }

  private refuseMarks(event: NodeEvent, field: string): void {
    if (event.anchorStart >= 0) {
      const start = event.anchorStart - MARK;
      this.refuse(
        'yaml-alias',
        `\`${shownText(this.text.slice(start, event.anchorEnd))}\` is a YAML anchor or alias, which these files do not use.`,
        this.placeAt(start, field),
        'Write the value out in each place. If a text begins with & or *, put it in quotes.',
      );
    }
    if (event.type !== EVENT_ID.ALIAS && event.tagStart >= 0) {
      this.refuse(
        'yaml-tag',
        `\`${shownText(this.text.slice(event.tagStart, event.tagEnd))}\` is a YAML tag, which these files do not use.`,
        this.placeAt(event.tagStart, field),
        'Take it out. If a text begins with !, put it in quotes.',
      );
    }
  }

  private isPop(): boolean {
    return this.events[this.next]!.type === EVENT_ID.POP;
  }

  /** `key`: where the name of this value stands. */
  private value(key: Place, field: string): Placed {
    const event = this.events[this.next++] as NodeEvent;
    this.refuseMarks(event, field);
    if (event.type === EVENT_ID.ALIAS) {
      this.readTo = event.anchorEnd;
      return { value: null, place: key };
    }
    if (event.type === EVENT_ID.SCALAR) return this.scalar(event, key, field);
    this.readTo = event.start;
    const place = this.placeAt(event.start, field);
    return {
      value: event.type === EVENT_ID.MAPPING ? this.object(key, field) : this.list(key, field),
      place,
    };
  }

  private scalar(event: ScalarEvent, key: Place, field: string): Placed {
    // An empty value has no place of its own.
    if (event.valueStart < 0) return { value: null, place: key };
    this.readTo = event.valueEnd;
    const written = getScalarValue(this.text, event);
    const place = this.placeAt(event.valueStart + Math.max(0, event.indent), field);
    const isPlain = event.style === SCALAR_STYLE.PLAIN && event.tagStart < 0;
    const value = isPlain ? coreScalar(written) : written;
    return { value: typeof value === 'string' ? this.readable(value, place) : value, place };
  }

  /** Texts stand on papers, in file names and on the terminal: nothing in them may be hidden or lie on other lines. */
  private readable(value: string, place: Place): string {
    if (PLAINLY_READABLE.test(value)) return value;
    if (HALF_CHARACTER.test(value)) {
      this.refuse(
        'not-text',
        'An escape gives half a character, which is not text.',
        place,
        'Write the character itself.',
      );
      return composed(value);
    }
    const unreadable = unreadablePart(value);
    if (unreadable === undefined) return composed(value);
    const { message, advice } = unreadableWords(unreadable);
    this.refuse('unreadable-text', message, place, advice);
    // What is left is checked on, so that one mistake is told once.
    return composed(withoutHeapedMarks(withoutUnseen(value, '', '\n\t')));
  }

  private object(key: Place, field: string): object {
    const object = Object.create(null) as Record<string, unknown>;
    const spots = new Map<string, Spot>();
    this.spots.set(object, spots);
    this.own.set(object, key);
    while (!this.isPop()) {
      const event = this.events[this.next++] as NodeEvent;
      const written = this.nameOf(event);
      if (written === null) {
        this.refuseKey(event, field);
        continue;
      }
      this.readTo = (event as ScalarEvent).valueEnd;
      const shown = shownText(composed(written));
      const within = field === '' ? shown : `${field}${FIELD_JOINT}${shown}`;
      const keyPlace = this.placeAt(startOf(event), within);
      this.refuseMarks(event, within);
      const name = this.readable(written, keyPlace);
      if (!this.keyIsFine(name, spots, keyPlace)) {
        this.skip();
        continue;
      }
      const placed = this.value(keyPlace, within);
      object[name] = placed.value;
      spots.set(name, { key: keyPlace, value: placed.place });
    }
    this.next++;
    return object;
  }

  /** The name of a field as it is written; null for what is none: a list, fields, nothing or `null`. */
  private nameOf(event: NodeEvent): string | null {
    if (event.type !== EVENT_ID.SCALAR || event.valueStart < 0) return null;
    const written = getScalarValue(this.text, event);
    return event.style === SCALAR_STYLE.PLAIN && coreScalar(written) === null ? null : written;
  }

  private refuseKey(event: NodeEvent, field: string): void {
    const start = startOf(event);
    this.refuse(
      'yaml-key',
      'The name of a field must be one word or text.',
      this.placeAt(start < 0 ? this.readTo : start, field),
      'Write `name: value`; a name that begins with a bracket or mark goes in quotes.',
    );
    if (event.type === EVENT_ID.MAPPING || event.type === EVENT_ID.SEQUENCE) {
      while (!this.isPop()) this.skip();
      this.next++;
    }
    this.skip();
  }

  /** Passes over one value and all that is in it. */
  private skip(): void {
    let depth = 0;
    do {
      const { type } = this.events[this.next++]!;
      if (type === EVENT_ID.MAPPING || type === EVENT_ID.SEQUENCE) depth++;
      else if (type === EVENT_ID.POP) depth--;
    } while (depth > 0);
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

  private list(key: Place, field: string): unknown[] {
    const spots: Spot[] = [];
    const list: unknown[] = [];
    this.spots.set(list, spots);
    this.own.set(list, key);
    while (!this.isPop()) {
      const name = ordinal(list.length + 1);
      const within = field === '' ? `${name} entry` : `${field}${FIELD_JOINT}${name}`;
      const start = this.entryPlace(this.events[this.next] as NodeEvent, key, within);
      const placed = this.value(start, within);
      list.push(placed.value);
      spots.push({ key: start, value: placed.place });
    }
    this.next++;
    return list;
  }

  /** Where an entry of a list begins; an empty one at its dash. */
  private entryPlace(event: NodeEvent, key: Place, field: string): Place {
    if (event.type !== EVENT_ID.SCALAR || event.valueStart >= 0) return this.placeAt(startOf(event), field);
    TO_DASH.lastIndex = this.readTo;
    if (!TO_DASH.test(this.text)) return { ...key, field };
    this.readTo = TO_DASH.lastIndex;
    return this.placeAt(this.readTo - 1, field);
  }
}

function isQuoted({ style }: ScalarEvent): boolean {
  return style === SCALAR_STYLE.SINGLE_QUOTED || style === SCALAR_STYLE.DOUBLE_QUOTED;
}

/** Offset of the first character of a value that is not empty, be it a quote. */
function startOf(event: NodeEvent): number {
  if (event.type === EVENT_ID.ALIAS) return event.anchorStart - MARK;
  if (event.type !== EVENT_ID.SCALAR) return event.start;
  return isQuoted(event) ? event.valueStart - 1 : event.valueStart;
}
