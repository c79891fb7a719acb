import { nearestWord } from '../../src/basics/nearestWord.ts';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { Library } from '../../src/model/library.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import type { BuyOptions } from '../commands/buy.ts';
import { type LibraryShelf, readOrderFile, withoutRepeats } from '../cutting/prepareJobs.ts';

/** An order of a purchase, worked out to its panels. */
export interface ReadyOrder {
  readonly file: string;
  readonly ordered: OrderedFurniture;
}

export interface ReadyOrders {
  readonly orders: readonly ReadyOrder[];
  readonly library: Library;
}

function unknownSaw(name: string, library: Library): Finding[] {
  if (library.saws.has(name)) return [];
  const known = [...library.saws.keys()];
  const nearest = nearestWord(name, known);
  return [
    {
      code: 'unknown-word',
      severity: 'error',
      message: `\`${name}\` is not a saw of this library.`,
      place: { file: library.id, field: '--saw' },
      found: name,
      expected: known.join(', '),
      ...(nearest === undefined ? {} : { nearest }),
    },
  ];
}

/** Orders that cannot be bought for at once: of different libraries, or two of one name. */
function clashes(orders: readonly ReadyOrder[]): Finding[] {
  const findings: Finding[] = [];
  const first = orders[0];
  const files = new Map<string, string>();
  for (const { file, ordered } of orders) {
    if (ordered.library !== first?.ordered.library) {
      findings.push({
        code: 'libraries-differ',
        severity: 'error',
        message: `This order is made from another library than ${first?.file}.`,
        place: { file, field: 'library' },
        found: ordered.library.id,
        expected: first?.ordered.library.id ?? '',
        advice: 'buy for the orders of each library by themselves',
      });
    }
    const before = files.get(ordered.order.id);
    if (before !== undefined) {
      findings.push({
        code: 'order-twice',
        severity: 'error',
        message: `The order ${ordered.order.id} is named twice; the first is ${before}.`,
        place: { file },
        advice: 'name each order once; for several vans alike use its count',
      });
    }
    files.set(ordered.order.id, file);
  }
  return findings;
}

function sawsDiffer(orders: readonly ReadyOrder[]): Finding[] {
  const saws = [...new Set(orders.map(({ ordered }) => ordered.order.saw))];
  if (saws.length < 2) return [];
  return [
    {
      code: 'saws-differ',
      severity: 'warning',
      message:
        'The orders are for different saws, so those of one saw share no sheets with those of another.',
      found: saws.join(', '),
      advice: 'name one saw for all of them with --saw',
    },
  ];
}

/** The order with what the options say for all of them. */
function withOptions(ordered: OrderedFurniture, { saw, start }: BuyOptions): OrderedFurniture {
  const order = {
    ...ordered.order,
    ...(saw === undefined ? {} : { saw }),
    ...(start === undefined || ordered.order.start !== undefined ? {} : { start }),
  };
  return { ...ordered, order };
}

/** Reads every order and works out its panels; all findings of all files come back at once. */
export async function readOrders(
  files: readonly string[],
  options: BuyOptions,
): Promise<Checked<ReadyOrders>> {
  const shelf: LibraryShelf = new Map();
  const orders: ReadyOrder[] = [];
  const found: Finding[] = [];
  for (const file of files) {
    const read = await readOrderFile(file, options, shelf);
    found.push(...read.findings);
    if (!read.ok) continue;
    const { text, library: own, whatIf } = read.value;
    const furnished = furnishOrder(text, file, own, whatIf);
    found.push(...furnished.findings);
    if (furnished.ok) orders.push({ file, ordered: withOptions(furnished.value, options) });
  }
  const library = orders[0]?.ordered.library;
  if (options.saw !== undefined && library !== undefined) found.push(...unknownSaw(options.saw, library));
  const findings = [...withoutRepeats(found), ...clashes(orders), ...sawsDiffer(orders)];
  if (library === undefined || findings.some(({ severity }) => severity === 'error'))
    return { ok: false, findings };
  return { ok: true, value: { orders, library }, findings };
}
