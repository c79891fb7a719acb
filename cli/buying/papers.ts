import type { Papers } from '../../src/edge/index.ts';
import type { PurchaseReport } from '../../src/model/purchase.ts';
import { purchasePages, purchaseTables } from '../../src/pipeline/buyOrders.ts';
import { csvFromTable } from '../../src/pipeline/listTables.ts';
import { makePapers } from '../../src/pipeline/makePapers.ts';
import type { BuyOptions } from '../commands/buy.ts';
import type { NestedWay } from './nestWays.ts';

/**
 * All papers of a purchase: its lists, the requests, and the plans. What is cut together has the usual papers of a job;
 * of orders that are cut apart only the plan files are kept, since `plywright cut` makes the papers of each.
 */
export async function purchasePapers(
  report: PurchaseReport,
  way: NestedWay,
  options: BuyOptions,
): Promise<Papers> {
  const papers = new Map<string, string | Uint8Array>();
  for (const table of purchaseTables(report)) papers.set(`${table.name}.csv`, csvFromTable(table));
  const { loadDrawingTools } = await import('../cutting/drawingTools.ts');
  const tools = await loadDrawingTools();
  const wishes = { language: options.language, lengths: options.lengths };
  const { pdfFromDrawings } = await import('../papers/pdfFromDrawings.ts');
  for (const [name, { title, pages }] of purchasePages(report, tools.measure, wishes)) {
    papers.set(`${name}.pdf`, await pdfFromDrawings(pages, { title, language: options.language }));
  }
  if (way.way === 'together') {
    for (const [path, text] of makePapers(way.jobs[0]!, way.plans[0]!, tools, wishes)) papers.set(path, text);
  } else {
    for (const [index, { name }] of way.jobs.entries())
      papers.set(`plans/${name}.json`, way.plans[index]!.text);
  }
  return papers;
}
