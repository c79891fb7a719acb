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

/** Reads the changes in order: a unit that has been added can be changed after it, one left out cannot. */
class ChangeReader {
  private readonly reader: FieldReader;
  private readonly library: Library;
  private readonly identifiers: ReadonlySet<string>;
  /** Units in place by name: the unit they are of. */
  private readonly standing: Map<string, string>;
  private readonly leftOut = new Map<string, Place>();

  constructor(reader: FieldReader, library: Library, layout: LayoutDefinition) {
    this.reader = reader;
    this.library = library;
    this.identifiers = identifiersOf(layout);
    this.standing = new Map(layout.units.map((use) => [use.name, use.unit]));
  }

  private find(name: string, place: Place): string | undefined {
    const unit = this.standing.get(name);
    if (unit !== undefined) return unit;
    const gone = this.leftOut.get(name);
    this.reader.report(
      gone === undefined
        ? unknownWord(name, 'a unit of this layout', this.standing.keys(), place)
        : errorFinding(
            'already-left-out',
            `\`${shownText(name)}\` has been left out on line ${gone.line}.`,
            place,
          ),
    );
    return undefined;
  }

  private settle(
    unitId: string,
    fields: Readonly<Record<string, number | string>> | undefined,
  ): ReadonlyMap<string, Formula> {
    const parameters = this.library.units.get(unitId)?.parameters ?? [];
    const scope = {
      what: `a parameter of the unit \`${unitId}\``,
      parameters,
      identifiers: this.identifiers,
    };
    const settled = settleValues(readFormulas(this.reader, fields), scope);
    for (const finding of settled.findings) this.reader.report(finding);
    return settled.values;
  }

  read(change: ChangeField): OrderChange | undefined {
    const { yaml } = this.reader;
    if ('unit' in change) {
      const place = yaml.placeOf(change, 'unit');
      const unit = this.find(change.unit, place);
      if (unit === undefined) return undefined;
      return { kind: 'set', unit: change.unit, set: this.settle(unit, change.set), place };
    }
    if ('leave out' in change) {
      const place = yaml.placeOf(change, 'leave out');
      const name = change['leave out'];
      if (this.find(name, place) === undefined) return undefined;
      this.standing.delete(name);
      this.leftOut.set(name, place);
      return { kind: 'leave out', unit: name, place };
    }
    return this.readAdd(change);
  }

  private readAdd(change: Extract<ChangeField, { add: string }>): OrderChange | undefined {
    const { yaml } = this.reader;
    const place = yaml.placeOf(change, 'add');
    if (this.standing.has(change.as)) {
      const message = `There is a unit \`${shownText(change.as)}\` already.`;
      const details = { advice: 'Choose another name.' };
      this.reader.report(errorFinding('duplicate-name', message, yaml.placeOf(change, 'as'), details));
    }
    if (!this.library.units.has(change.add)) {
      this.reader.report(unknownWord(change.add, 'a unit of this library', this.library.units.keys(), place));
      return undefined;
    }
    this.standing.set(change.as, change.add);
    const at = (axis: 'x' | 'y' | 'z') => this.reader.formula(change.at, axis);
    return {
      kind: 'add',
      name: change.as,
      unit: change.add,
      at: { x: at('x'), y: at('y'), z: at('z') },
      facing: change.facing,
      set: this.settle(change.add, change.set),
      place,
    };
  }
}

/** The changes to the layout, in the order in which they are made. */
export function readChanges(
  reader: FieldReader,
  fields: OrderFile['changes'],
  library: Library,
  layout: LayoutDefinition,
): OrderChange[] {
  const changes = new ChangeReader(reader, library, layout);
  return (fields ?? []).flatMap((field) => changes.read(field) ?? []);
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
