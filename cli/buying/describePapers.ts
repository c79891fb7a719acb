import { describePapers } from '../cutting/describeJob.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { counted, printable } from '../terminal/text.ts';

/** Where the papers of a purchase are, a line a kind: its own first, then those of its plans. */
export function describePurchasePapers(
  folder: string,
  paths: readonly string[],
  colours: ReturnType<typeof coloursFor>,
): string {
  const isOwn = (path: string) => /^(?:purchase[.-]|request-)/.test(path);
  const requests = paths.filter((path) => path.startsWith('request-'));
  const line = (path: string, words: string) => `  ${path.padEnd(20)}  ${words}`;
  const own = [
    line('purchase.pdf', 'the purchase, for the buyer'),
    line('purchase-*.csv', 'lists of sheets, edging, fittings, suppliers, ways, orders'),
    ...(requests.length === 0
      ? []
      : [line('request-*.pdf', `${counted(requests.length, 'request')}, one for each supplier`)]),
  ];
  const plans = paths.filter((path) => path.startsWith('plans/'));
  const others = paths.filter((path) => !isOwn(path) && !path.startsWith('plans/'));
  if (plans.length > 0) {
    own.push(line(`plans/ (${plans.length})`, "plan files; 'plywright cut' makes the papers of each order"));
  }
  const rest =
    others.length === 0 ? '' : describePapers(folder, others, colours).split('\n').slice(1).join('\n');
  return [colours.bold(`Papers in ${printable(folder)}/`), ...own, rest].join('\n');
}
