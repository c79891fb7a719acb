import { checkedValue, errorFinding, listWords, shownText, unknownWord } from '../basics/findings.ts';
import { readPlacedYaml } from '../basics/placedYaml.ts';
import { checkShape } from '../basics/shape.ts';
import { placeWord } from '../basics/vehicleSection.ts';
import { FieldReader } from '../basics/yamlFields.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { LayoutDefinition, Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';
import { readChanges, readChoices } from './changes.ts';
import { readOwnSheets, readRoles } from './roles.ts';
import { type OrderFile, orderFile } from './schema.ts';

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

/** Checks the words that name one thing of the library each; gives the layout. */
function checkWords(reader: FieldReader, value: OrderFile, library: Library): LayoutDefinition | undefined {
  const place = (key: keyof OrderFile) => reader.yaml.placeOf(value, key);
  const isWritten = (key: keyof OrderFile) => reader.yaml.isWritten(value, key);
  const layout = library.layouts.get(value.layout);
  if (layout === undefined && isWritten('layout')) {
    reader.report(
      unknownWord(value.layout, 'a layout of this library', library.layouts.keys(), place('layout')),
    );
  }
  const word = placeWord(library.vehicles.values());
  if (isWritten('vehicle') && !library.vehicles.has(value.vehicle)) {
    const known = layout?.vehicles ?? library.vehicles.keys();
    reader.report(unknownWord(value.vehicle, `a ${word} of this library`, known, place('vehicle')));
  } else if (isWritten('vehicle') && layout !== undefined && !layout.vehicles.includes(value.vehicle)) {
    reader.report(
      errorFinding(
        'vehicle-not-fitting',
        `The layout \`${layout.id}\` is not drawn for the ${word} \`${value.vehicle}\`.`,
        place('vehicle'),
        { found: value.vehicle, expected: listWords(layout.vehicles) },
      ),
    );
  }
  if (isWritten('saw') && !library.saws.has(value.saw)) {
    reader.report(unknownWord(value.saw, 'a saw of this library', library.saws.keys(), place('saw')));
  }
  return layout;
}

/**
 * One customer's order from its text, checked against the library. `file` is the path to show, and its base name is the
 * order's id. Every role of the library gets a board and finish that can be bought together, and the first edging of
 * the finish that covers the board where none is named. Words given to choices become texts in quotes, ready to be
 * evaluated; other values are formulas with their place. Every error comes back at once. Which library an order names
 * is only kept: finding it is the caller's part (`libraryOfOrder` reads just that).
 */
export function readOrder(text: string, file: string, library: Library): Checked<Order> {
  const findings: Finding[] = [];
  const id = orderIdOf(file, findings);
  const placed = readPlacedYaml(text, file);
  findings.push(...placed.findings);
  if (placed.yaml === undefined) return checkedValue<Order>(undefined, findings);
  const { value, findings: shapeFindings } = checkShape(placed.yaml, orderFile, {
    title: '?',
    library: '?',
    layout: 'x',
    vehicle: 'x',
    saw: 'x',
    roles: {},
  });
  findings.push(...shapeFindings);
  if (value === undefined) return checkedValue<Order>(undefined, findings);
  const reader = new FieldReader(placed.yaml, findings);
  const layout = checkWords(reader, value, library);
  const start = value.start === undefined ? undefined : reader.day(value, 'start');
  const ownSheets = readOwnSheets(reader, value, library);
  const order: Order = {
    id,
    title: value.title,
    note: value.note ?? '',
    library: value.library,
    layout: value.layout,
    vehicle: value.vehicle,
    saw: value.saw,
    count: value.count ?? 1,
    ...(value.persons === undefined ? {} : { persons: value.persons }),
    ...(start === undefined ? {} : { start }),
    ...(ownSheets === undefined ? {} : { ownSheets }),
    choices: layout === undefined ? new Map() : readChoices(reader, value.choices, layout),
    roles: reader.yaml.isWritten(value, 'roles') ? readRoles(reader, value.roles, library) : new Map(),
    changes: layout === undefined ? [] : readChanges(reader, value.changes, library, layout),
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
