import { paperPages } from '../documents/purchase/paperPages.ts';
import { purchasePapers } from '../documents/purchase/purchasePapers.ts';
import { wordsOf } from '../documents/words/index.ts';
import type { Drawing, TextMeasurer } from '../drawing/index.ts';
import type { PurchaseReport } from '../model/purchase.ts';
import type { PaperWishes } from './makePapers.ts';

/** What a purchase needs of the stages: its findings and its lists. */
export { purchaseFindings } from '../buying/findings.ts';
export { purchaseTables } from '../documents/purchase/purchaseTables.ts';

/** The papers of a purchase for people, by name: the purchase itself, and a request for each supplier. */
export function purchasePages(
  report: PurchaseReport,
  measure: TextMeasurer,
  wishes: PaperWishes,
): ReadonlyMap<string, { readonly title: string; readonly pages: readonly Drawing[] }> {
  const words = wordsOf(wishes.language);
  const papers = purchasePapers(report, { words, units: wishes.lengths });
  return new Map(
    [...papers].map(([name, paper]) => [
      name,
      { title: paper.title, pages: paperPages(paper, words, measure) },
    ]),
  );
}
