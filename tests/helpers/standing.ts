import type { Facing } from '../../src/model/geometry.ts';
import type { Library, Vehicle } from '../../src/model/library.ts';
import type { Order } from '../../src/model/order.ts';
import { type Furnished, formula, furnish } from './demoVan.ts';

/** A room or body whose inner width is given at heights, in mm; 6 m long. */
export function body(widths: readonly (readonly [height: number, width: number])[]): Vehicle {
  return {
    id: 'body',
    title: 'A body',
    insideLengthUm: 6_000_000,
    insideHeightUm: 2_400_000,
    widthAtHeight: widths.map(([height, width]) => ({ heightUm: height * 1000, widthUm: width * 1000 })),
    wheelArches: [],
    doors: [],
    overallLengthUm: 6_000_000,
    payloadKg: null,
  };
}

/** One unit of a library where it stands in a vehicle; `at` in mm, as in a layout. */
export function standing(
  unit: string,
  set: Readonly<Record<string, string | number>>,
  at: { readonly x?: number; readonly y?: number; readonly z?: number },
  facing: Facing,
  vehicle: Vehicle,
  library: Library,
  order: Order,
): Furnished {
  const place = { file: 'test.yaml', line: 1, column: 1 };
  const corner = { x: formula(at.x ?? 0), y: formula(at.y ?? 0), z: formula(at.z ?? 0) };
  const values = new Map(Object.entries(set).map(([name, text]) => [name, formula(text)]));
  const use = {
    name: 'unit',
    place,
    unit,
    at: corner,
    facing,
    set: values,
    when: null,
    repeat: null,
    heldBy: [],
  };
  const layout = {
    id: 'standing',
    title: 'Standing',
    file: 'test.yaml',
    vehicles: [vehicle.id],
    choices: [],
    names: new Map(),
    units: [use],
    musts: [],
  };
  return furnish(
    { ...order, layout: layout.id, vehicle: vehicle.id, choices: new Map(), changes: [] },
    {
      ...library,
      vehicles: new Map([[vehicle.id, vehicle]]),
      layouts: new Map([[layout.id, layout]]),
    },
  );
}
