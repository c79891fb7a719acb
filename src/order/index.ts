import { checkedValue, errorFinding, listWords, shownText, unknownWord } from '../basics/findings.ts';
import { nearestWord } from '../basics/nearestWord.ts';
import { readPlacedYaml } from '../basics/placedYaml.ts';
import { checkShape } from '../basics/shape.ts';
import { placeWord } from '../basics/vehicleSection.ts';
import { FieldReader } from '../basics/yamlFields.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Formula, LayoutDefinition, Library } from '../model/library.ts';
import type { Order, OrderChange } from '../model/order.ts';
import type { FileText, WhatIf } from '../model/whatIf.ts';
import { ChangeReader, readChoices } from './changes.ts';
import { changeRoles, readOwnSheets, readRoles } from './roles.ts';
import { type OrderFile, orderFile, variantFile } from './schema.ts';
import { layerOfSetting, type SettingLayer } from './settings.ts';

/** Names that some systems keep for devices, so that no folder can be called so. */
const DEVICE_NAME = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])$/;

/** The file's base name, safe as a folder name. */
function orderIdOf(file: string, findings: Finding[]): string {
  const id = (file.split(/[/\\]/).at(-1) ?? '').replace(/\.ya?ml$/i, '');
  if (!/^[a-z0-9]+(?:-[a-z0-9]+)*$/.test(id) || id.length > 60 || DEVICE_NAME.test(id)) {
    const message = `The name of the file, \`${shownText(id)}\`, cannot be used as the name of an order.`;
    findings.push(
      errorFinding(
        'bad-name',
        message,
        { file },
        {
          expected: 'lower-case words and numbers joined by hyphens, such as kitchen-light-oak.yaml',
          advice: 'Rename the file: papers and folders are named after it.',
        },
      ),
    );
  }
  return id;
}

/** Checks the layout and the saw; gives the layout. */
function checkWords(reader: FieldReader, value: OrderFile, library: Library): LayoutDefinition | undefined {
  const place = (key: keyof OrderFile) => reader.yaml.placeOf(value, key);
  const isWritten = (key: keyof OrderFile) => reader.yaml.isWritten(value, key);
  const layout = library.layouts.get(value.layout);
  if (layout === undefined && isWritten('layout')) {
    reader.report(
      unknownWord(value.layout, 'a layout of this library', library.layouts.keys(), place('layout')),
    );
  }
  if (isWritten('saw') && !library.saws.has(value.saw)) {
    reader.report(unknownWord(value.saw, 'a saw of this library', library.saws.keys(), place('saw')));
  }
  return layout;
}

/** Checks the vehicle where a file names one. */
function checkVehicle(
  reader: FieldReader,
  value: { readonly vehicle: string },
  library: Library,
  layout: LayoutDefinition | undefined,
): void {
  if (!reader.yaml.isWritten(value, 'vehicle')) return;
  const place = reader.yaml.placeOf(value, 'vehicle');
  const word = placeWord(library.vehicles.values());
  if (!library.vehicles.has(value.vehicle)) {
    const known = layout?.vehicles ?? library.vehicles.keys();
    reader.report(unknownWord(value.vehicle, `a ${word} of this library`, known, place));
  } else if (layout !== undefined && !layout.vehicles.includes(value.vehicle)) {
    reader.report(
      errorFinding(
        'vehicle-not-fitting',
        `The layout \`${layout.id}\` is not drawn for the ${word} \`${value.vehicle}\`.`,
        place,
        { found: value.vehicle, expected: listWords(layout.vehicles) },
      ),
    );
  }
}

/** What stands in for fields of an order that are missing, so that the others can still be checked. */
const SPARE_ORDER = { title: '?', library: '?', layout: 'x', vehicle: 'x', saw: 'x' };

/** A file with its shape checked, or undefined where nothing of it can be used. */
function readShape<S extends Parameters<typeof checkShape>[1]>(
  { text, file }: FileText,
  schema: S,
  spare: Readonly<Record<string, unknown>>,
  findings: Finding[],
) {
  const placed = readPlacedYaml(text, file);
  findings.push(...placed.findings);
  if (placed.yaml === undefined) return undefined;
  const { value, findings: shapeFindings } = checkShape(placed.yaml, schema, spare);
  findings.push(...shapeFindings);
  return value === undefined ? undefined : { value, reader: new FieldReader(placed.yaml, findings) };
}

/** Longest end of an order's name that the settings leave room for. */
const NAME_WITH_SETTINGS = 50;

/** An order with settings is another: its papers must not take the place of those that are sawn by. */
function nameOfWhatIf(id: string, set: readonly string[]): string {
  return set.length === 0 ? id : `${id.slice(0, NAME_WITH_SETTINGS).replace(/-$/, '')}-what-if`;
}

/** The choices of a file and of those on top of it, later ones in the place of earlier ones. */
function choicesOf(layers: readonly SettingLayer[], layout: LayoutDefinition): ReadonlyMap<string, Formula> {
  return new Map(layers.flatMap(({ reader, value }) => [...readChoices(reader, value.choices, layout)]));
}

/**
 * One customer's order from its text, checked against the library. `file` is the path to show, and its base name is the
 * order's id. The text may be that of a variant: `whatIf` has the files that it stands on, and settings of the command
 * line that go before all files; an order with settings is called after them. Every role of the library gets a board
 * and finish that can be bought together, and the first edging of the finish that covers the board where none is named.
 * Words given to choices become texts in quotes, ready to be evaluated; other values are formulas with their place.
 * Every error comes back at once. Which library an order names is only kept: finding it is the caller's part
 * (`libraryOfOrder` reads just that).
 */
export function readOrder(
  text: string,
  file: string,
  library: Library,
  { below, set }: WhatIf = { below: [], set: [] },
): Checked<Order> {
  const findings: Finding[] = [];
  const id = orderIdOf(file, findings);
  const [lowest, ...onTop] = [...[...below].reverse(), { text, file }];
  const base = readShape(lowest!, orderFile, { ...SPARE_ORDER, roles: {} }, findings);
  const variants = onTop.flatMap((each) => {
    const read = readShape(each, variantFile, { 'variant of': '?' }, findings);
    return read === undefined ? [] : [read];
  });
  if (base === undefined || variants.length < onTop.length) return checkedValue<Order>(undefined, findings);
  const { value, reader } = base;
  const layout = checkWords(reader, value, library);
  checkVehicle(reader, value, library, layout);
  for (const variant of variants) {
    const { vehicle } = variant.value;
    if (vehicle !== undefined)
      checkVehicle(variant.reader, variant.value as { vehicle: string }, library, layout);
  }
  const start = value.start === undefined ? undefined : reader.day(value, 'start');
  const ownSheets = readOwnSheets(reader, value, library);
  const files: readonly SettingLayer[] = [base, ...variants];
  const changes: OrderChange[] = [];
  const layers = [...files];
  if (layout !== undefined) {
    const changeReader = new ChangeReader(library, layout);
    const make = (layer: SettingLayer) => {
      for (const change of layer.value.changes ?? []) {
        const read = changeReader.read(layer.reader, change);
        if (read !== undefined) changes.push(read);
      }
    };
    files.forEach(make);
    for (const setting of set) {
      const layer = layerOfSetting(setting, changeReader.names(), library, findings);
      if (layer === undefined) continue;
      layers.push(layer);
      make(layer);
    }
  }
  const last = <Key extends 'title' | 'note' | 'vehicle'>(key: Key) =>
    files.reduce<string | undefined>((found, layer) => layer.value[key] ?? found, undefined);
  const roles = reader.yaml.isWritten(value, 'roles') ? readRoles(reader, value.roles, library) : new Map();
  const roleFields = new Map(Object.entries(value.roles));
  for (const layer of layers.slice(1)) {
    changeRoles(layer.reader, layer.value.roles ?? {}, library, roles, roleFields);
  }
  const title = last('title') ?? value.title;
  const order: Order = {
    id: nameOfWhatIf(id, set),
    title: set.length === 0 ? title : `${title} (${set.join(', ')})`,
    note: last('note') ?? '',
    library: value.library,
    layout: value.layout,
    vehicle: last('vehicle') ?? value.vehicle,
    saw: value.saw,
    count: value.count ?? 1,
    ...(value.persons === undefined ? {} : { persons: value.persons }),
    ...(value['on the roof'] === undefined ? {} : { onRoofKg: value['on the roof'] }),
    ...(start === undefined ? {} : { start }),
    ...(ownSheets === undefined ? {} : { ownSheets }),
    choices: layout === undefined ? new Map() : choicesOf(layers, layout),
    roles,
    changes,
    cutOutPieces: value['cut-out pieces'] ?? 'waste',
    place: { file, line: 1, column: 1 },
  };
  return checkedValue(order, findings);
}

/**
 * The library that an order names, a name or a path, without any other check: to find the library first and read the
 * order then. Undefined when the text has none that can be read; `readOrder` says why.
 */
export function libraryOfOrder(text: string, file: string): string | undefined {
  const { yaml } = readPlacedYaml(text, file);
  const value = yaml?.value;
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return undefined;
  const { library } = value as { library?: unknown };
  return typeof library === 'string' && library.length <= 500 ? library : undefined;
}

const STANDS_ON = 'variant of';

/**
 * The file that a variant says it stands on, as written; null for an order. A finding where the field is misspelt or
 * holds no path; a text that cannot be read counts as an order, and `readOrder` says what is wrong with it.
 */
export function fileBelow(text: string, file: string): Checked<string | null> {
  const none: Checked<null> = { ok: true, value: null, findings: [] };
  const { yaml } = readPlacedYaml(text, file);
  const value = yaml?.value;
  if (yaml === undefined || typeof value !== 'object' || value === null || Array.isArray(value)) return none;
  const fields = value as Record<string, unknown>;
  const key = Object.keys(fields).find((each) => nearestWord(each, [STANDS_ON]) !== undefined);
  if (key === undefined) return none;
  const written = fields[key];
  if (key !== STANDS_ON) {
    const message = `\`${shownText(key)}\` is not a field of an order or a variant.`;
    const details = { expected: `${STANDS_ON}: followed by the path of an order`, nearest: STANDS_ON };
    return {
      ok: false,
      findings: [errorFinding('unknown-field', message, yaml.placeOfKey(value, key), details)],
    };
  }
  if (typeof written === 'string' && written !== '' && written.length <= 500) {
    return { ok: true, value: written, findings: [] };
  }
  const message = `\`${STANDS_ON}\` does not name an order.`;
  const details = { expected: 'the path of an order file, from the folder of this one' };
  return {
    ok: false,
    findings: [errorFinding('wrong-kind', message, yaml.placeOf(value, STANDS_ON), details)],
  };
}
