import type { Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';

/** An order as a file: its name without a folder, and its text. */
export interface MadeOrder {
  readonly file: string;
  readonly text: string;
}

/**
 * A layout in a vehicle as an order, with its defaults, and with saw, boards and finishes of another order of the library.
 * `library` is how the order is to name the library.
 */
export function orderOfLayout(
  like: Order,
  library: Library,
  layout: string,
  vehicle: string,
  named: string,
): MadeOrder {
  const title = (thing: { readonly title: string } | undefined, id: string) => thing?.title ?? id;
  const roles = [...like.roles].map(
    ([role, { board, finish, edging }]) =>
      `  ${role}: { board: ${board}, finish: ${finish}, edging: ${edging ?? 'none'} }`,
  );
  const both = `${title(library.layouts.get(layout), layout)}, ${title(library.vehicles.get(vehicle), vehicle)}`;
  const lines = [
    `title: ${JSON.stringify(both.slice(0, 200))}`,
    `library: ${JSON.stringify(named)}`,
    `layout: ${layout}`,
    `vehicle: ${vehicle}`,
    `saw: ${like.saw}`,
    'roles:',
    ...roles,
    '',
  ];
  return { file: `${layout}-${vehicle}.yaml`, text: lines.join('\n') };
}
