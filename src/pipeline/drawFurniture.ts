import { wordsOf } from '../documents/words/index.ts';
import { type Drawing, drawLayout, drawUnit } from '../drawing/index.ts';
import { svgFromDrawing } from '../drawing/svg.ts';
import type { Library } from '../model/library.ts';
import type { OrderedFurniture } from './job.ts';
import type { DrawingTools, PaperWishes } from './makePapers.ts';

/** Words for ids: titles of the library's boards, finishes, fittings and units. */
export function titlesOf(library: Library): Map<string, string> {
  const kinds = [library.boards, library.finishes, library.fittings, library.units];
  return new Map(
    kinds.flatMap((kind) => [...kind.values()].map((thing) => [thing.id, thing.title] as const)),
  );
}

function fileOf(name: string): string {
  const plain = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain === '' ? 'unnamed' : plain.slice(0, 80);
}

/**
 * Drawings of the furniture of an order as SVG texts by file name: every unit, and all of them in the vehicle where the
 * order says `layout`. The same furniture gives the same bytes.
 */
export function drawFurniture(
  ordered: OrderedFurniture,
  what: 'units and layout' | 'units only',
  tools: DrawingTools,
  wishes: PaperWishes,
): ReadonlyMap<string, string> {
  const papers = new Map<string, string>();
  const options = {
    measure: tools.measure,
    words: wordsOf(wishes.language).drawings,
    units: wishes.lengths,
    job: ordered.order.title,
    titles: titlesOf(ordered.library),
  };
  const keep = (name: string, pages: readonly Drawing[]) => {
    let free = name;
    for (let number = 2; papers.has(`${free}.svg`); number++) free = `${name}-${number}`;
    pages.forEach((page, index) => {
      papers.set(index === 0 ? `${free}.svg` : `${free}-page-${index + 1}.svg`, svgFromDrawing(page));
    });
  };
  const vehicle = ordered.library.vehicles.get(ordered.order.vehicle);
  if (what === 'units and layout') {
    if (vehicle === undefined) throw new Error(`the vehicle ${ordered.order.vehicle} is not in the library`);
    keep('layout', drawLayout(ordered.furniture, vehicle, ordered.library.finishes, options));
  }
  for (const unit of ordered.furniture.units) keep(fileOf(unit.name), drawUnit(unit, options));
  return papers;
}
