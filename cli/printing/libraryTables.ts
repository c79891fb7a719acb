import { printMmShort } from '../../src/basics/lengths.ts';
import { placeWord } from '../../src/basics/vehicleSection.ts';
import type {
  LayoutDefinition,
  Library,
  ParameterDefinition,
  UnitDefinition,
} from '../../src/model/library.ts';
import type { ListKind } from '../commands/list.ts';
import { money } from '../terminal/money.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { printable } from '../terminal/text.ts';

type TableKind = Exclude<ListKind, 'library' | 'units' | 'layouts'>;

/** One kind of a library's things as a table; lengths in mm. */
export function libraryTable(library: Library, kind: TableKind): string {
  const table = tables[kind](library);
  const rows = table.rows.map((row) => row.map((cell) => printable(String(cell))));
  return plainTable(table.head, rows, table.aligns);
}

interface Rows {
  readonly head: readonly string[];
  readonly aligns: string;
  readonly rows: readonly (readonly (string | number)[])[];
}

const tables: Readonly<Record<TableKind, (library: Library) => Rows>> = {
  roles: (library) => ({
    head: ['role', 'for'],
    aligns: 'll',
    rows: [...library.roles],
  }),
  boards: (library) => ({
    head: ['board', 'title', 'mm', 'kg/m²', 'decorated faces'],
    aligns: 'llrrr',
    rows: [...library.boards.values()].map((b) => [
      b.id,
      b.title,
      printMmShort(b.thicknessUm),
      b.arealMassKgPerM2,
      b.decoratedFaces,
    ]),
  }),
  finishes: (library) => ({
    head: ['finish', 'title', 'grain'],
    aligns: 'lll',
    rows: [...library.finishes.values()].map((f) => [f.id, f.title, f.grain ? 'yes' : 'no']),
  }),
  edgings: (library) => ({
    head: ['edging', 'title', 'finish', 'mm thick', 'mm wide', 'per m'],
    aligns: 'lllrrr',
    rows: [...library.edgings.values()].map((e) => [
      e.id,
      e.title,
      e.finish,
      printMmShort(e.thicknessUm),
      printMmShort(e.widthUm),
      money(e.priceMinorPerM, ''),
    ]),
  }),
  fittings: (library) => ({
    head: ['fitting', 'title', 'kg', `price ${library.currency}`, 'pack'],
    aligns: 'llrrr',
    rows: [...library.fittings.values()].map((f) => [
      f.id,
      f.title,
      f.massKg,
      money(f.priceMinor, ''),
      f.pack,
    ]),
  }),
  sheets: (library) => ({
    head: ['sheet', 'board', 'finish', 'length', 'width', 'grain', `price ${library.currency}`, 'count'],
    aligns: 'lllrrlrr',
    rows: library.sheets.map((s) => [
      s.id,
      s.board,
      s.finish,
      printMmShort(s.lengthUm),
      printMmShort(s.widthUm),
      s.grain,
      money(s.priceMinor, ''),
      s.count ?? 'any',
    ]),
  }),
  suppliers: (library) => ({
    head: ['supplier', 'title', 'days', `least ${library.currency}`, 'delivery', 'free from'],
    aligns: 'llrrrr',
    rows: [...library.suppliers.values()].map((s) => [
      s.id,
      s.title,
      s.deliveryDays,
      s.leastOrderMinor === null ? 'any' : money(s.leastOrderMinor, ''),
      money(s.deliveryMinor, ''),
      s.freeDeliveryFromMinor === null ? '–' : money(s.freeDeliveryFromMinor, ''),
    ]),
  }),
  saws: (library) => ({
    head: ['saw', 'title', 'kerf', 'trim', 'first cut', 'turns'],
    aligns: 'llrrlr',
    rows: [...library.saws.values()].map((s) => [
      s.id,
      s.name,
      printMmShort(s.kerfUm),
      [...new Set([s.trimUm.left, s.trimUm.right, s.trimUm.near, s.trimUm.far])].map(printMmShort).join('/'),
      s.firstCut,
      s.turns ?? 'any',
    ]),
  }),
  vehicles: (library) => ({
    head: [placeWord(library.vehicles.values()), 'title', 'inside length', 'height', 'payload kg'],
    aligns: 'llrrr',
    rows: [...library.vehicles.values()].map((v) => [
      v.id,
      v.title,
      printMmShort(v.insideLengthUm),
      printMmShort(v.insideHeightUm),
      v.payloadKg ?? '–',
    ]),
  }),
};

function describeParameter(parameter: ParameterDefinition): string {
  const note = parameter.note === '' ? '' : `  ${printable(parameter.note)}`;
  if (parameter.kind === 'choice') {
    return `  ${parameter.name}: ${parameter.default} (${parameter.choices.join(', ')})${note}`;
  }
  const limits = [
    parameter.least === null ? '' : `least ${parameter.least.text}`,
    parameter.most === null ? '' : `most ${parameter.most.text}`,
  ].filter((limit) => limit !== '');
  const range = limits.length === 0 ? '' : ` (${limits.join(', ')})`;
  return `  ${parameter.name}: ${parameter.default.text}${range}${note}`;
}

/** A unit with its parameters: default, least, most or choices. */
export function describeUnit(unit: UnitDefinition): string {
  return [`${unit.id}  ${printable(unit.title)}`, ...unit.parameters.map(describeParameter)].join('\n');
}

/** A layout with the vehicles or rooms that it is for, its choices and units. */
export function describeLayout(layout: LayoutDefinition, library: Library): string {
  const places = layout.vehicles.flatMap((id) => library.vehicles.get(id) ?? []);
  return [
    `${layout.id}  ${printable(layout.title)}`,
    `  for the ${placeWord(places)}${layout.vehicles.length === 1 ? '' : 's'}: ${layout.vehicles.join(', ')}`,
    ...(layout.choices.length === 0
      ? []
      : ['  choices:', ...layout.choices.map((c) => `  ${describeParameter(c)}`)]),
    '  units:',
    ...layout.units.map((use) => `    ${use.name} (${use.unit}, facing ${use.facing})`),
  ].join('\n');
}
