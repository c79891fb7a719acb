import { SeededRandom } from '../../src/basics/random.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import { demoFiles, demoLibrary, demoRoot } from '../helpers/demoVan.ts';
import { drawList, jobOfList } from './randomList.ts';
import { drawOrder } from './randomOrder.ts';
import { type SawnTwice, sawTwice } from './sawnTwice.ts';

/** How many of each kind are drawn; the same numbers and seed give the same jobs. */
export interface Wanted {
  readonly lists: number;
  readonly orders: number;
  readonly seed: number;
  /** Lists of more panels are counted and not nested. */
  readonly mostPanels: number;
  /** Asked before each job; what is left is not drawn. */
  readonly stop?: () => boolean;
  /** Told after each job. */
  readonly done?: (kind: 'list' | 'order', counts: Counts) => void;
}

export interface Counts {
  drawn: number;
  /** Refused in words before anything was nested. */
  refused: number;
  tooMany: number;
  /** The saw or the stock does not allow a plan. */
  notCut: number;
  plans: number;
  sheets: number;
  panels: number;
  /** `list 17: what a replay has against it`, by the seed that draws it. */
  invalid: string[];
}

function none(): Counts {
  return { drawn: 0, refused: 0, tooMany: 0, notCut: 0, plans: 0, sheets: 0, panels: 0, invalid: [] };
}

/** Moves of the search: enough that sheets are tidied and changed, too few to take long; none for most lists. */
const MOVES = [0, 0, 0, 20] as const;

/** Draws, nests and saws twice. A job that is drawn from seed S alone is the first of a run from S. */
export function runRandomJobs(wanted: Wanted): { readonly lists: Counts; readonly orders: Counts } {
  const lists = none();
  const orders = none();
  for (let seed = wanted.seed; seed < wanted.seed + wanted.lists && !wanted.stop?.(); seed++) {
    tryList(seed, wanted.mostPanels, lists);
    wanted.done?.('list', lists);
  }
  if (wanted.orders === 0) return { lists, orders };
  const library = demoLibrary();
  const demo = demoFiles().get(`${demoRoot}/orders/demo-long.yaml`)!;
  const roles = demo.slice(demo.indexOf('roles:'), demo.indexOf('changes:'));
  for (let seed = wanted.seed; seed < wanted.seed + wanted.orders && !wanted.stop?.(); seed++) {
    orders.drawn += 1;
    const text = drawOrder(new SeededRandom(seed), library, roles);
    const job = prepareOrder(text, `${demoRoot}/orders/random.yaml`, library);
    if (job.ok) saw(orders, `order ${seed}`, () => sawTwice(job.value, seed, 0));
    else orders.refused += 1;
    wanted.done?.('order', orders);
  }
  return { lists, orders };
}

function tryList(seed: number, mostPanels: number, counts: Counts): void {
  counts.drawn += 1;
  const random = new SeededRandom(seed);
  const { job } = jobOfList(drawList(random), random);
  if (job === null) {
    counts.refused += 1;
    return;
  }
  const demands = job.groups.flatMap((group) => group.demands);
  if (demands.reduce((sum, { count }) => sum + count, 0) > mostPanels) counts.tooMany += 1;
  else saw(counts, `list ${seed}`, () => sawTwice(job, seed, MOVES[seed % MOVES.length]!));
}

/** A run must not end with its first fault: one that is thrown is told with the seed, as an invalid plan is. */
function saw(counts: Counts, name: string, sawn: () => SawnTwice): void {
  try {
    add(counts, name, sawn());
  } catch (error) {
    counts.invalid.push(`${name}: throws ${error instanceof Error ? error.stack : String(error)}`);
  }
}

function add(counts: Counts, name: string, { text, sheets, panels, against }: SawnTwice): void {
  counts.sheets += sheets;
  counts.panels += panels;
  if (text === null) counts.notCut += 1;
  else counts.plans += 1;
  if (against.length > 0) counts.invalid.push(`${name}: ${against.join('; ')}`);
}
