import type { StockGroup } from '../model/stock.ts';

/** All that the nest of a stock group depends on, as a text: groups with the same content have the same nest. */
export function groupContent({ demands, sheets, saw, pricedBy }: StockGroup): string {
  return JSON.stringify([demands, sheets, saw, pricedBy]);
}
