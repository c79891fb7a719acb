import { nearestWord } from '../basics/nearestWord.ts';
import { checkFurniture } from '../checks/index.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Formula, LayoutDefinition, Library, UnitDefinition, Vehicle } from '../model/library.ts';
import type { WhatIf } from '../model/whatIf.ts';
import { readOrder } from '../order/index.ts';
import { makePanels } from '../panels/index.ts';
import { expandOrder } from '../units/index.ts';
import { type OrderedFurniture, placedIn } from './job.ts';

/** One unit asked for by itself: values for its parameters as a person wrote them, by name. */
export interface UnitAsked {
  readonly unit: string;
  readonly set: ReadonlyMap<string, string>;
}

/** A room so large that it asks nothing of a unit. */
const HALL: Vehicle = {
  id: 'hall',
  title: 'Hall',
  insideLengthUm: 100_000_000,
  insideHeightUm: 100_000_000,
  widthAtHeight: [{ heightUm: 0, widthUm: 100_000_000 }],
  wheelArches: [],
  doors: [],
  overallLengthUm: 100_000_000,
  payloadKg: 1_000_000,
};

/** A value for a choice is a word, and stands in quotes where formulas do. */
function formulaOf(definition: UnitDefinition, name: string, text: string): Formula {
  const choice = definition.parameters.some((each) => each.name === name && each.kind === 'choice');
  const quoted = choice && !/^['"]/.test(text) ? `'${text}'` : text;
  return { text: quoted, place: { file: `--set ${name}=${text}` } };
}

function layoutOf(definition: UnitDefinition, asked: UnitAsked): LayoutDefinition {
  const zero: Formula = { text: '0', place: { file: definition.file } };
  const set = new Map([...asked.set].map(([name, text]) => [name, formulaOf(definition, name, text)]));
  const place = { file: definition.file };
  const at = { x: zero, y: zero, z: zero };
  return {
    id: 'alone',
    title: definition.title,
    file: definition.file,
    vehicles: [HALL.id],
    choices: [],
    names: new Map(),
    units: [
      { name: definition.id, place, unit: definition.id, at, facing: 'left', set, when: null, repeat: null },
    ],
    musts: [],
  };
}

/**
 * One unit of a library by itself, with the boards that an order gives each role. `text` and `file` are the order; what
 * it says of layout, vehicle and changes is left aside. What is wrong with the unit comes back as findings.
 */
export function furnishUnit(
  asked: UnitAsked,
  text: string,
  file: string,
  library: Library,
  whatIf?: WhatIf,
): Checked<OrderedFurniture> {
  const definition = library.units.get(asked.unit);
  if (definition === undefined) {
    const nearest = nearestWord(asked.unit, library.units.keys());
    const finding: Finding = {
      code: 'unknown-unit',
      severity: 'error',
      message: `The library has no unit “${asked.unit}”.`,
      found: asked.unit,
      expected: [...library.units.keys()].join(', '),
      ...(nearest === undefined ? {} : { nearest }),
    };
    return { ok: false, findings: [finding] };
  }
  const read = readOrder(text, file, library, whatIf);
  if (!read.ok) return read;
  const alone: Library = {
    ...library,
    vehicles: new Map([[HALL.id, HALL]]),
    layouts: new Map([['alone', layoutOf(definition, asked)]]),
  };
  const order = {
    ...read.value,
    layout: 'alone',
    vehicle: HALL.id,
    count: 1,
    choices: new Map(),
    changes: [],
  };
  // It stands nowhere, so there is nothing to fit into and no side to load.
  const nowhere = { ...order, vehicle: '' };
  const findings = [...read.findings];
  const expanded = expandOrder(order, alone);
  findings.push(...placedIn(definition.file, expanded.findings));
  if (!expanded.ok) return { ok: false, findings };
  const furniture = makePanels(expanded.value, order, alone);
  findings.push(...placedIn(definition.file, furniture.findings));
  if (!furniture.ok) return { ok: false, findings };
  findings.push(...placedIn(definition.file, checkFurniture(furniture.value, nowhere, alone)));
  if (findings.some((finding) => finding.severity === 'error')) return { ok: false, findings };
  return { ok: true, value: { order, library: alone, furniture: furniture.value }, findings };
}
