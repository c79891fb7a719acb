import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { checkFurniture } from '../../src/checks/index.ts';
import { readLibrary } from '../../src/library/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Furniture, Panel, PlacedUnit } from '../../src/model/furniture.ts';
import type { Formula, Library, Vehicle } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import { readOrder } from '../../src/order/index.ts';
import { makePanels } from '../../src/panels/index.ts';
import { expandOrder } from '../../src/units/index.ts';

const root = resolve(import.meta.dirname, '../..');
export const demoRoot = 'parts-libraries/demo-van';

/** Every file of the demonstration library by its path in the project. */
export function demoFiles(): Map<string, string> {
  return libraryFiles(demoRoot);
}

/** Every file of a library by its path in the project; `folder` as `parts-libraries/workshop-bench`. */
export function libraryFiles(folder: string): Map<string, string> {
  const entries = readdirSync(join(root, folder), { withFileTypes: true, recursive: true });
  const paths = entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
  return new Map(paths.map((path) => [path, readFileSync(join(root, path), 'utf8')]));
}

export function must<T>(checked: { ok: true; value: T } | { ok: false; findings: readonly Finding[] }): T {
  if (checked.ok) return checked.value;
  throw new Error(checked.findings.map((finding) => finding.message).join('\n'));
}

/** The demonstration library, with `[path below the library, text before, text after]` changed; reads its own errors. */
export function demoLibrary(...changes: readonly (readonly [string, string, string])[]): Library {
  const files = demoFiles();
  for (const [path, before, after] of changes) {
    const text = files.get(`${demoRoot}/${path}`) ?? '';
    if (!text.includes(before)) throw new Error(`${path} has no ${before}`);
    files.set(`${demoRoot}/${path}`, text.replace(before, after));
  }
  return must(readLibrary(files, demoRoot));
}

export function demoOrder(library: Library, name = 'demo-long'): Order {
  const path = `${demoRoot}/orders/${name}.yaml`;
  return must(readOrder(demoFiles().get(path)!, path, library));
}

export interface Furnished {
  readonly findings: readonly Finding[];
  readonly furniture: Furniture | null;
}

/** The stages from an order to checked furniture. */
export function furnish(order: Order, library: Library): Furnished {
  const expanded = expandOrder(order, library);
  if (!expanded.ok) return { findings: expanded.findings, furniture: null };
  const made = makePanels(expanded.value, order, library);
  if (!made.ok) return { findings: made.findings, furniture: null };
  const findings = [...expanded.findings, ...made.findings, ...checkFurniture(made.value, order, library)];
  return { findings, furniture: made.value };
}

export function formula(text: string | number): Formula {
  return { text: String(text), place: { file: 'test.yaml', line: 1, column: 1 } };
}

const hall: Vehicle = {
  id: 'hall',
  title: 'A hall',
  insideLengthUm: 10_000_000,
  insideHeightUm: 5_000_000,
  widthAtHeight: [{ heightUm: 0, widthUm: 10_000_000 }],
  wheelArches: [],
  doors: [],
  overallLengthUm: 10_000_000,
  payloadKg: 5000,
};

/** One unit of a library alone in a large hall, with the boards of an order. */
export function alone(
  unit: string,
  set: Readonly<Record<string, string | number>>,
  library: Library,
  order: Order,
): Furnished & { readonly unit: PlacedUnit | null } {
  const place = { file: 'test.yaml', line: 1, column: 1 };
  // Nothing is near: what an appliance asks for around it is no matter here.
  const at = { x: formula(2000), y: formula(2000), z: formula(1000) };
  const values = new Map(Object.entries(set).map(([name, text]) => [name, formula(text)]));
  const layout = {
    id: 'alone',
    title: 'Alone',
    file: 'test.yaml',
    vehicles: ['hall'],
    choices: [],
    names: new Map(),
    units: [
      {
        name: 'unit',
        place,
        unit,
        at,
        facing: 'left' as const,
        set: values,
        when: null,
        repeat: null,
        heldBy: [],
      },
    ],
    musts: [],
  };
  const furnished = furnish(
    { ...order, layout: 'alone', vehicle: 'hall', choices: new Map(), changes: [] },
    { ...library, vehicles: new Map([['hall', hall]]), layouts: new Map([['alone', layout]]) },
  );
  return { ...furnished, unit: furnished.furniture?.units[0] ?? null };
}

export function panelOf(furnished: Furnished, unit: string, name: string): Panel {
  const panels = furnished.furniture?.units.find((placed) => placed.name === unit)?.panels ?? [];
  const panel = panels.find((candidate) => candidate.name === name);
  if (panel === undefined)
    throw new Error(`no panel ${name} in ${unit}: ${panels.map((p) => p.name).join(', ')}`);
  return panel;
}

export function messages(findings: readonly Finding[]): string[] {
  return findings.map((finding) => finding.message);
}
