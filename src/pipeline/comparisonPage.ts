import { comparisonPage } from '../documents/comparison/comparisonPage.ts';
import { wordsOf } from '../documents/words/index.ts';
import { drawLayout } from '../drawing/index.ts';
import { svgFromDrawing } from '../drawing/svg.ts';
import type { Comparison } from '../model/comparison.ts';
import { titlesOf } from './drawFurniture.ts';
import type { OrderedFurniture } from './job.ts';
import type { BookTools } from './makeBook.ts';
import type { PaperWishes } from './makePapers.ts';

/** The page of a comparison; `ordered` has the furniture of each design, in their order. Throws for an unknown language. */
export function pageOfComparison(
  comparison: Comparison,
  ordered: readonly OrderedFurniture[],
  tools: BookTools,
  wishes: PaperWishes,
): string {
  const words = wordsOf(wishes.language);
  const layouts = ordered.map(({ order, library, furniture }) => {
    const vehicle = library.vehicles.get(order.vehicle);
    if (vehicle === undefined) throw new Error(`the vehicle ${order.vehicle} is not in the library`);
    const options = {
      measure: tools.measure,
      words: words.drawings,
      units: wishes.lengths,
      job: order.title,
    };
    const [page] = drawLayout(furniture, vehicle, library.finishes, {
      ...options,
      titles: titlesOf(library),
    });
    return page!;
  });
  const { window, sha256 } = tools;
  return comparisonPage(
    comparison,
    { svgOf: (drawing) => svgFromDrawing(drawing, window), sha256, layouts, plots: [] },
    words,
  );
}
