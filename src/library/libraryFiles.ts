import type { z } from 'zod';
import { errorFinding, shownText, warningFinding } from '../basics/findings.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import { type PlacedYaml, readPlacedYaml } from '../basics/placedYaml.ts';
import { checkShape } from '../basics/shape.ts';
import { FieldReader } from '../basics/yamlFields.ts';
import type { Finding } from '../model/finding.ts';
import type { TextFiles } from '../model/library.ts';

const LISTS = [
  'library.yaml',
  'boards.yaml',
  'finishes.yaml',
  'edgings.yaml',
  'fittings.yaml',
  'drilling.yaml',
  'appliances.yaml',
  'sheets.yaml',
  'suppliers.yaml',
  'saws.yaml',
  'rates.yaml',
];
const FOLDERS = ['vehicles', 'units', 'layouts'];
/** Folders beside the library's own that it does not read. */
const OTHER_FOLDERS = ['orders', 'schemas'];

/** A file whose shape has been checked, with what is needed to read its fields. */
export interface ReadFile<T> {
  readonly value: T;
  readonly yaml: PlacedYaml;
  readonly reader: FieldReader;
  /** The file's base name without `.yaml`. */
  readonly id: string;
}

/** The texts of one library, and the findings about them. */
export class LibraryFiles {
  private readonly texts = new Map<string, string>();
  private readonly prefix: string;
  /** Files out of which something wrong was taken, so that what is not in them may only be missing for that. */
  readonly flawed = new Set<string>();
  private readonly findings: Finding[];

  constructor(files: TextFiles, root: string, findings: Finding[]) {
    this.prefix = root === '' ? '' : `${root}/`;
    this.findings = findings;
    const paths = [...files.keys()].filter((path) => path.startsWith(this.prefix)).sort();
    for (const path of paths) this.texts.set(path.slice(this.prefix.length), files.get(path)!);
  }

  report(finding: Finding): void {
    this.findings.push(finding);
  }

  /** Whether the library has the file, readable or not. */
  has(path: string): boolean {
    return this.texts.has(path);
  }

  /** Ids of the files in a folder of the library, readable or not. */
  idsIn(folder: string): string[] {
    const inside = [...this.texts.keys()].filter((path) => path.startsWith(`${folder}/`));
    return inside.flatMap((path) => /^[^/]+\/([^/]+)\.yaml$/.exec(path)?.[1] ?? []);
  }

  /** One file against its schema; undefined when it is missing or nothing of it can be used. `spare`: see `checkShape`. */
  read<S extends z.ZodType>(
    path: string,
    schema: S,
    presence: 'needed' | 'optional',
    spare: Readonly<Record<string, unknown>> = {},
  ): ReadFile<z.infer<S>> | undefined {
    const text = this.texts.get(path);
    const file = `${this.prefix}${path}`;
    if (text === undefined) {
      if (presence === 'needed') this.findings.push(this.missingFile(path, file));
      return undefined;
    }
    const placed = readPlacedYaml(text, file);
    this.findings.push(...placed.findings);
    if (placed.yaml === undefined) return undefined;
    const shape = checkShape(placed.yaml, schema, spare);
    this.findings.push(...shape.findings);
    if (shape.findings.length > 0) this.flawed.add(file);
    if (shape.value === undefined) return undefined;
    return {
      value: shape.value,
      yaml: placed.yaml,
      reader: new FieldReader(placed.yaml, this.findings),
      id: path
        .split('/')
        .at(-1)!
        .replace(/\.yaml$/, ''),
    };
  }

  private missingFile(path: string, file: string): Finding {
    const others = [...this.texts.keys()].filter((other) => !LISTS.includes(other));
    return errorFinding(
      'missing-file',
      `The library has no file \`${path}\`.`,
      { file },
      {
        nearest: nearestWord(path, others),
        advice:
          this.texts.size === 0
            ? 'There are no files here at all: check the path of the library.'
            : undefined,
      },
    );
  }

  /** Every file of a folder, by id in the order of their names; those that cannot be used are left out. */
  readFolder<T>(
    folder: string,
    readOne: (files: LibraryFiles, path: string) => T | undefined,
  ): Map<string, T> {
    const values = new Map<string, T>();
    for (const id of this.idsIn(folder)) {
      const path = `${folder}/${id}.yaml`;
      if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id)) {
        this.report(
          errorFinding(
            'bad-name',
            `\`${shownText(id)}\` cannot be used as the name of a file here.`,
            { file: this.prefix + path },
            {
              expected: 'lower-case words and numbers joined by hyphens, such as base-cupboard.yaml',
            },
          ),
        );
        continue;
      }
      const value = readOne(this, path);
      if (value !== undefined) values.set(id, value);
    }
    return values;
  }

  /** Says which YAML files are never read, most likely because their name is wrong. */
  warnOfStrangeFiles(): void {
    for (const path of this.texts.keys()) {
      const [folder, rest] = path.includes('/') ? path.split('/', 2) : ['', path];
      const yaml = /\.ya?ml$/i.test(path);
      if (!yaml || OTHER_FOLDERS.includes(folder!)) continue;
      const fine =
        folder === '' ? LISTS.includes(path) : FOLDERS.includes(folder!) && /^[^/]+\/[^/]+\.yaml$/.test(path);
      if (fine) continue;
      this.report(
        warningFinding(
          'unread-file',
          `\`${shownText(path)}\` is not a file that a library has, so it is not read.`,
          { file: this.prefix + path },
          {
            expected: `${LISTS.join(', ')} and files in ${FOLDERS.join('/, ')}/`,
            nearest:
              folder === ''
                ? nearestWord(path, LISTS)
                : nearestWord(
                    `${folder}/${rest}`,
                    FOLDERS.map((each) => `${each}/${rest}`),
                  ),
            advice: /\.yml$/i.test(path) ? 'Files end in .yaml here.' : undefined,
          },
        ),
      );
    }
  }
}
