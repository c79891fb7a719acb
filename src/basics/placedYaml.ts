import { type Event, parseEvents, YAMLException } from 'js-yaml';
import type { Finding, Place } from '../model/finding.ts';
import { errorFinding } from './findings.ts';
import { TextLines } from './textLines.ts';
import { type Spot, YamlPlacer } from './yamlPlacer.ts';
import { yamlSyntaxFinding } from './yamlSyntax.ts';

/** Largest file that is read, in UTF-16 units (about bytes): what people write is a thousand times smaller. */
export const LARGEST_FILE = 5_000_000;
/** Deepest nesting that is read. Deeper files are not written by people and would exhaust the parser. */
const DEEPEST = 60;
/** Mistakes in the form of a file that are told at once. */
const MOST_OF_FORM = 5;

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
      { file, line: new TextLines(text).placeAt(odd).line },
      { advice: 'Save it as UTF-8 text.' },
    );
  }
  return undefined;
}

/** The events of a text, or what keeps it from being read as YAML. */
function parse(text: string, file: string): readonly Event[] | Finding {
  try {
    return parseEvents(text, { maxDepth: DEEPEST });
  } catch (problem) {
    if (!(problem instanceof YAMLException)) throw problem;
    const lines = new TextLines(text);
    if (!problem.reason.startsWith('nesting exceeded')) return yamlSyntaxFinding(problem, text, file, lines);
    return errorFinding(
      'nested-too-deep',
      'Brackets or list marks are nested too deep here.',
      { file, line: lines.placeAt(problem.mark?.position ?? 0).line },
      { expected: `at most ${DEEPEST} levels` },
    );
  }
}

/**
 * The first mistakes in the form of a text: each line with one is left out, with the deeper ones that belong to it, and the
 * rest is read on, so that what follows from a mistake is not told as another.
 */
function formFindings(first: Finding, text: string, file: string): readonly Finding[] {
  const findings = [first];
  let last = first;
  let rest = text;
  while (findings.length < MOST_OF_FORM && last.code === 'yaml-syntax') {
    rest = withoutBlock(rest, last.place!.line!);
    const next = parse(rest, file);
    if (!('code' in next) || next.place!.line! <= last.place!.line!) break;
    findings.push(next);
    last = next;
  }
  return findings;
}

/** The text with spaces for a line and for the deeper ones below it. */
function withoutBlock(text: string, line: number): string {
  const lines = new TextLines(text);
  const depth = (at: number) => lines.content(at).search(/\S/);
  const own = depth(line);
  let end = line + 1;
  while (lines.startOf(end) < text.length && (depth(end) < 0 || depth(end) > own)) end++;
  const [from, to] = [lines.startOf(line), lines.startOf(end)];
  return text.slice(0, from) + text.slice(from, to).replace(/[^\r\n]/g, ' ') + text.slice(to);
}

/**
 * Reads one YAML text (YAML 1.2, one document, no anchors, aliases, tags or merges, no field twice) with the place of
 * everything in it. `file` is the name to show. Gives the file or what keeps it from being read, all at once.
 */
export function readPlacedYaml(
  text: string,
  file: string,
):
  | { readonly yaml: PlacedYaml; readonly findings: readonly Finding[] }
  | { readonly yaml: undefined; readonly findings: readonly Finding[] } {
  const refused = refuseText(text, file);
  if (refused !== undefined) return { yaml: undefined, findings: [refused] };
  const events = parse(text, file);
  if ('code' in events) return { yaml: undefined, findings: formFindings(events, text, file) };
  const placer = new YamlPlacer(file, text, new TextLines(text), events);
  const value = placer.read();
  const second = placer.secondDocument();
  if (second !== undefined) return { yaml: undefined, findings: [second] };
  return { yaml: new PlacedYaml(file, value, placer.spots, placer.own), findings: placer.findings };
}
