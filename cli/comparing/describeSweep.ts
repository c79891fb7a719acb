import {
  leastOf,
  runsOf,
  type Sweep,
  type SweepPoint,
  sheetsFall,
  sheetsOf,
  stepsText,
} from '../../src/pipeline/sweepOrder.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

function range(texts: readonly string[]): string {
  const [first, last] = [texts[0] ?? '', texts.at(-1) ?? ''];
  return first === last ? first : `${first} … ${last}`;
}

/** From the least to the greatest of some figures, as printed. */
function span(values: readonly number[], print: (value: number) => string): string {
  const [least, most] = [Math.min(...values), Math.max(...values)].map(print) as [string, string];
  return least === most ? least : `${least}–${most}`;
}

function rowOf(run: readonly SweepPoint[], parameters: readonly string[]): string[] {
  const firsts = (run[0]?.values ?? []).slice(0, -1);
  const tried = [...firsts, range(run.map(({ values }) => values.at(-1) ?? ''))];
  const designs = run.flatMap(({ result }) => (result.ok ? [result.design] : []));
  const [first] = designs;
  if (first === undefined) return [...tried, '–', '', '', '', 'cannot be built'];
  const [sheets, least] = [sheetsOf(first), leastOf(first)];
  const money = designs.map((each) => (each.pricedBy === 'material' ? each.materialMinor : each.netMinor));
  const at = run[0]!;
  const falls = sheetsFall(at) ? '▼ ' : '';
  return [
    ...tried,
    `${sheets}${least < sheets ? ` (${least})` : ''}`,
    span(money, (minor) => (minor / 100).toFixed(2)),
    span(
      designs.map((each) => each.furnitureKg),
      (kg) => kg.toFixed(1),
    ),
    span(
      designs.map((each) => 100 * each.yield),
      (percent) => percent.toFixed(1),
    ),
    `${falls}${stepsText(at, parameters)}`,
  ].map(printable);
}

/** What the terminal says of a sweep: points that follow each other with the same sheets are one line. */
export function describeSweep(sweep: Sweep): string {
  const runs = runsOf(sweep.points);
  const designs = sweep.points.flatMap(({ result }) => (result.ok ? [result.design] : []));
  const [first] = designs;
  const price = first?.pricedBy === 'material' ? 'material' : 'estimate';
  const currency = first === undefined || first.currency === '' ? '' : ` ${first.currency}`;
  const head = [...sweep.parameters.map(printable), 'sheets', `${price}${currency}`, 'kg', 'yield %', 'step'];
  const table = plainTable(
    head,
    runs.map((run) => rowOf(run, sweep.parameters)),
    `${'r'.repeat(sweep.parameters.length)}rrrrl`,
  );
  const refused = new Map<string, string>();
  for (const { values, result } of sweep.points) {
    if (!result.ok && !refused.has(result.refused)) refused.set(result.refused, values.join(', '));
  }
  const notes = [
    'in brackets the least sheets there can be, where it is less; ▼ a sheet falls away',
    ...[...refused].map(([why, where]) => `cannot be built from ${printable(where)} on: ${printable(why)}`),
  ];
  return `${table}\n\n${notes.map((note) => wrap(note, TERMINAL_WIDTH, '  ')).join('\n')}\n`;
}
