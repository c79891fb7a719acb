import { wordsOf } from '../documents/words/index.ts';
import { type Drawing, drawContactSheet } from '../drawing/index.ts';
import { svgFromDrawing } from '../drawing/svg.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { PlacedUnit } from '../model/furniture.ts';
import type { Library } from '../model/library.ts';
import type { FileText, WhatIf } from '../model/whatIf.ts';
import { titlesOf } from './drawFurniture.ts';
import { furnishUnit } from './furnishUnit.ts';
import type { DrawingTools, PaperWishes } from './makePapers.ts';

/** An order whose boards units are drawn with. */
export interface OrderText extends FileText {
  readonly whatIf?: WhatIf;
}

/**
 * Pages with all units of a library side by side, each with its defaults and the boards that an order gives each role;
 * A unit that cannot be put together is told with its findings, and then nothing is drawn.
 */
export function contactSheetOf(
  order: OrderText,
  library: Library,
  tools: DrawingTools,
  wishes: PaperWishes,
): Checked<readonly Drawing[]> {
  const units: PlacedUnit[] = [];
  // What is wrong with the order would be said once for each unit.
  const said = new Map<string, Finding>();
  for (const unit of library.units.keys()) {
    const made = furnishUnit({ unit, set: new Map() }, order.text, order.file, library, order.whatIf);
    for (const finding of made.findings) said.set(JSON.stringify(finding), finding);
    if (made.ok) units.push(...made.value.furniture.units);
  }
  const findings = [...said.values()];
  if (units.length < library.units.size) return { ok: false, findings };
  const pages = drawContactSheet(units, {
    measure: tools.measure,
    words: wordsOf(wishes.language).drawings,
    units: wishes.lengths,
    job: library.title,
    titles: titlesOf(library),
  });
  return { ok: true, value: pages, findings };
}

/** The pages of `contactSheetOf` as SVG texts by file name. */
export function drawUnitsOfLibrary(
  order: OrderText,
  library: Library,
  tools: DrawingTools,
  wishes: PaperWishes,
): Checked<ReadonlyMap<string, string>> {
  const pages = contactSheetOf(order, library, tools, wishes);
  if (!pages.ok) return pages;
  const papers = new Map(
    pages.value.map((page, index) => [
      index === 0 ? 'units.svg' : `units-page-${index + 1}.svg`,
      svgFromDrawing(page),
    ]),
  );
  return { ...pages, value: papers };
}
