import { checkFurniture } from '../checks/index.ts';
import { makeStockGroups } from '../demands/index.ts';
import { readLibrary } from '../library/index.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { Library, TextFiles } from '../model/library.ts';
import type { SheetSupply } from '../model/stock.ts';
import type { WhatIf } from '../model/whatIf.ts';
import { readOrder } from '../order/index.ts';
import { makePanels } from '../panels/index.ts';
import { expandOrder } from '../units/index.ts';
import { type Job, type OrderedFurniture, placedIn } from './job.ts';

export type { FileText, WhatIf } from '../model/whatIf.ts';
export { fileBelow, libraryOfOrder as libraryNamedBy } from '../order/index.ts';

/** The first part of the line for a library alone: its texts by path, and the folder that they are in. */
export function readLibraryTexts(files: TextFiles, folder: string): Checked<Library> {
  return readLibrary(files, folder);
}

function failed<T>(findings: readonly Finding[]): Checked<T> {
  return { ok: false, findings };
}

function hasError(findings: readonly Finding[]): boolean {
  return findings.some((finding) => finding.severity === 'error');
}

/**
 * From the text of an order to furniture whose sizes are known, not checked yet. What each step finds is added up; the
 * line ends at the first step with an error, since the next would only repeat it in other words. `whatIf` is what the
 * order stands on, or is to be otherwise.
 */
export function panelsOfOrder(
  text: string,
  file: string,
  library: Library,
  whatIf?: WhatIf,
): Checked<OrderedFurniture> {
  const findings: Finding[] = [];
  const order = readOrder(text, file, library, whatIf);
  findings.push(...order.findings);
  if (!order.ok) return failed(findings);
  const expanded = expandOrder(order.value, library);
  findings.push(...placedIn(file, expanded.findings));
  if (!expanded.ok) return failed(findings);
  const furniture = makePanels(expanded.value, order.value, library);
  findings.push(...placedIn(file, furniture.findings));
  if (!furniture.ok) return failed(findings);
  return { ok: true, value: { order: order.value, library, furniture: furniture.value }, findings };
}

/** What the checks find in furniture of an order. */
export function checkOrdered({ furniture, order, library }: OrderedFurniture, file: string): Finding[] {
  return placedIn(file, checkFurniture(furniture, order, library));
}

/** From the text of an order to furniture whose sizes are known and checked, in the same way. */
export function furnishOrder(
  text: string,
  file: string,
  library: Library,
  whatIf?: WhatIf,
): Checked<OrderedFurniture> {
  const panels = panelsOfOrder(text, file, library, whatIf);
  if (!panels.ok) return panels;
  const findings = [...panels.findings, ...checkOrdered(panels.value, file)];
  return hasError(findings) ? failed(findings) : { ...panels, findings };
}

/** The sheets that a library offers, with the thickness of their board. */
export function suppliesOf(library: Library): SheetSupply[] {
  return library.sheets.flatMap((offer) => {
    const board = library.boards.get(offer.board);
    if (board === undefined) return [];
    const { id, finish, lengthUm, widthUm, grain, priceMinor, count } = offer;
    return [
      {
        id,
        board: board.id,
        finish,
        thicknessUm: board.thicknessUm,
        lengthUm,
        widthUm,
        grain,
        priceMinor,
        count,
        kind: 'sheet',
      },
    ];
  });
}

/**
 * From the text of an order to stock groups that can be nested; `offcutsOf` gives the offcuts on hand for an order's id, and
 * `sheetsOf` those sheets that it may take, from what the library offers.
 */
export function prepareOrder(
  text: string,
  file: string,
  library: Library,
  whatIf?: WhatIf,
  offcutsOf: (order: string) => readonly SheetSupply[] = () => [],
  sheetsOf: (order: string, offered: readonly SheetSupply[]) => readonly SheetSupply[] = (_, offered) =>
    offered,
): Checked<Job> {
  const furnished = furnishOrder(text, file, library, whatIf);
  if (!furnished.ok) return furnished;
  const { id } = furnished.value.order;
  const job = jobOfOrder(furnished.value, file, offcutsOf(id), sheetsOf(id, suppliesOf(library)));
  return { ...job, findings: [...furnished.findings, ...job.findings] };
}

/** An order whose furniture is worked out, as stock groups; `onHand` is offered beside `sheets`, those of the library. */
export function jobOfOrder(
  ordered: OrderedFurniture,
  file: string,
  onHand: readonly SheetSupply[] = [],
  sheets: readonly SheetSupply[] = suppliesOf(ordered.library),
): Checked<Job> {
  const { order, library, furniture } = ordered;
  const saw = library.saws.get(order.saw);
  if (saw === undefined) throw new Error(`the order's saw ${order.saw} is not in the library`);
  const parts = furniture.units.flatMap((unit) => unit.panels);
  const stock = makeStockGroups(parts, [...sheets, ...onHand], saw);
  const findings = placedIn(file, stock.findings);
  if (hasError(findings)) return failed(findings);
  return {
    ok: true,
    value: {
      name: order.id,
      title: order.title,
      currency: library.currency,
      groups: stock.groups,
      ordered,
    },
    findings,
  };
}
