import { errorFinding, shownText, unknownWord } from '../basics/findings.ts';
import { settleValues } from '../basics/parameterValues.ts';
import type { FieldReader } from '../basics/yamlFields.ts';
import type { Place } from '../model/finding.ts';
import type { Formula, LayoutDefinition, Library } from '../model/library.ts';
import type { OrderChange } from '../model/order.ts';
import type { ChangeField, OrderFile } from './schema.ts';

/** Formulas by name, as written. */
export function readFormulas(
  reader: FieldReader,
  fields: Readonly<Record<string, number | string>> | undefined,
): Map<string, Formula> {
  const formulas = new Map<string, Formula>();
  for (const name of Object.keys(fields ?? {})) formulas.set(name, reader.formula(fields!, name));
  return formulas;
}

/** Names that formulas of an order can use: those of its layout. */
function identifiersOf(layout: LayoutDefinition): Set<string> {
  const choices = layout.choices.map((choice) => choice.name);
  return new Set([...choices, ...layout.names.keys(), 'inch', 'thickness', 'vehicle']);
}

/**
 * Reads changes in the order in which they are made, from one file or several on top of each other: a unit that has
 * been added can be changed after it, one left out cannot.
 */
export class ChangeReader {
  private readonly library: Library;
  private readonly identifiers: ReadonlySet<string>;
  /** Units in place by name: the unit they are of. */
  private readonly standing: Map<string, string>;
  private readonly leftOut = new Map<string, Place>();

  constructor(library: Library, layout: LayoutDefinition) {
    this.library = library;
    this.identifiers = identifiersOf(layout);
    this.standing = new Map(layout.units.map((use) => [use.name, use.unit]));
  }

  /** Names of the units that stand so far, and of those that have been left out. */
  names(): string[] {
    return [...this.standing.keys(), ...this.leftOut.keys()];
  }

  private find(reader: FieldReader, name: string, place: Place): string | undefined {
    const unit = this.standing.get(name);
    if (unit !== undefined) return unit;
    const gone = this.leftOut.get(name);
    if (gone === undefined) {
      reader.report(unknownWord(name, 'a unit of this layout', this.standing.keys(), place));
      return undefined;
    }
    const where = gone.file === place.file ? `on line ${gone.line}` : `in ${gone.file}, line ${gone.line}`;
    const message = `\`${shownText(name)}\` has been left out ${where}.`;
    reader.report(errorFinding('already-left-out', message, place));
    return undefined;
  }

  private settle(
    reader: FieldReader,
    unitId: string,
    fields: Readonly<Record<string, number | string>> | undefined,
  ): ReadonlyMap<string, Formula> {
    const parameters = this.library.units.get(unitId)?.parameters ?? [];
    const scope = {
      what: `a parameter of the unit \`${unitId}\``,
      parameters,
      identifiers: this.identifiers,
    };
    const settled = settleValues(readFormulas(reader, fields), scope);
    for (const finding of settled.findings) reader.report(finding);
    return settled.values;
  }

  /** One change as it is written in a reader's file; undefined with a finding. */
  read(reader: FieldReader, change: ChangeField): OrderChange | undefined {
    const { yaml } = reader;
    if ('unit' in change) {
      const place = yaml.placeOf(change, 'unit');
      const unit = this.find(reader, change.unit, place);
      if (unit === undefined) return undefined;
      return { kind: 'set', unit: change.unit, set: this.settle(reader, unit, change.set), place };
    }
    if ('leave out' in change) {
      const place = yaml.placeOf(change, 'leave out');
      const name = change['leave out'];
      if (this.find(reader, name, place) === undefined) return undefined;
      this.standing.delete(name);
      this.leftOut.set(name, place);
      return { kind: 'leave out', unit: name, place };
    }
    return this.readAdd(reader, change);
  }

  private readAdd(
    reader: FieldReader,
    change: Extract<ChangeField, { add: string }>,
  ): OrderChange | undefined {
    const { yaml } = reader;
    const place = yaml.placeOf(change, 'add');
    if (this.standing.has(change.as)) {
      const message = `There is a unit \`${shownText(change.as)}\` already.`;
      const details = { advice: 'Choose another name.' };
      reader.report(errorFinding('duplicate-name', message, yaml.placeOf(change, 'as'), details));
    }
    if (!this.library.units.has(change.add)) {
      reader.report(unknownWord(change.add, 'a unit of this library', this.library.units.keys(), place));
      return undefined;
    }
    this.standing.set(change.as, change.add);
    const at = (axis: 'x' | 'y' | 'z') => reader.formula(change.at, axis);
    return {
      kind: 'add',
      name: change.as,
      unit: change.add,
      at: { x: at('x'), y: at('y'), z: at('z') },
      facing: change.facing,
      set: this.settle(reader, change.add, change.set),
      place,
    };
  }
}

/** What the customer chose of the layout's choices, ready to be evaluated. */
export function readChoices(
  reader: FieldReader,
  fields: OrderFile['choices'],
  layout: LayoutDefinition,
): ReadonlyMap<string, Formula> {
  const scope = {
    what: `a choice of the layout \`${layout.id}\``,
    parameters: layout.choices,
    identifiers: identifiersOf(layout),
  };
  const settled = settleValues(readFormulas(reader, fields), scope);
  for (const finding of settled.findings) reader.report(finding);
  return settled.values;
}
