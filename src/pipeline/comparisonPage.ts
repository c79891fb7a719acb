import { comparisonPage } from '../documents/comparison/comparisonPage.ts';
import { comparisonPlots } from '../documents/comparison/plots.ts';
import type { PlotWindow } from '../documents/comparison/plotText.ts';
import { sweepPage } from '../documents/comparison/sweepPage.ts';
import { sweepPlots } from '../documents/comparison/sweepPlots.ts';
import { wordsOf } from '../documents/words/index.ts';
import { drawLayout, pictureAlone } from '../drawing/index.ts';
import { svgFromDrawing } from '../drawing/svg.ts';
import type { Comparison } from '../model/comparison.ts';
import type { Sweep } from '../model/sweep.ts';
import { titlesOf } from './drawFurniture.ts';
import type { OrderedFurniture } from './job.ts';
import type { BookTools } from './makeBook.ts';
import type { PaperWishes } from './makePapers.ts';

/** What pages with plots need that only the edge can give. */
export interface PlotTools extends BookTools {
  /** In which plots are made. */
  readonly window: PlotWindow;
}

/** The page of a comparison; `ordered` has the furniture of each design, in their order. Throws for an unknown language. */
export function pageOfComparison(
  comparison: Comparison,
  ordered: readonly OrderedFurniture[],
  tools: PlotTools,
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
    return pictureAlone(page!);
  });
  const { window, sha256 } = tools;
  const plots = comparisonPlots(comparison, words.compare, window);
  return comparisonPage(
    comparison,
    { svgOf: (drawing) => svgFromDrawing(drawing), sha256, layouts, plots },
    words,
  );
}

/** The page of a sweep of an order with this title. Throws for an unknown language. */
export function pageOfSweep(
  sweep: Sweep,
  title: string,
  { window, sha256 }: Pick<PlotTools, 'window' | 'sha256'>,
  language: string,
): string {
  const words = wordsOf(language);
  return sweepPage(sweep, { title, sha256, plots: sweepPlots(sweep, words.compare, window) }, words);
}
