import { printMm } from '../../src/basics/lengths.ts';
import type { ListedChange, MaterialChange, OrderChanges } from '../../src/pipeline/compareOrders.ts';
import { toldAmount } from '../../src/pipeline/compareOrders.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { money } from '../terminal/money.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { counted, printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

function shorten(text: string, most: number): string {
  const plain = printable(text);
  return plain.length <= most ? plain : `${plain.slice(0, most - 1)}…`;
}

const kinds = ['same', 'changed', 'new', 'no longer needed'] as const;

/** In what a panel differs; of size, board and finish how. */
function differences({ before, after, differs }: ListedChange): string {
  if (before === null || after === null) {
    const { finishedLengthUm, finishedWidthUm } = (after ?? before)!;
    return `${printMm(finishedLengthUm)} × ${printMm(finishedWidthUm)}`;
  }
  const size = ({ finishedLengthUm: length, finishedWidthUm: width }: typeof before) =>
    `${printMm(length)} × ${printMm(width)}`;
  return differs
    .filter((aspect) => aspect !== 'cut size' || !differs.includes('size'))
    .map((aspect) => {
      if (aspect === 'size') return `${size(before)} → ${size(after)}`;
      if (aspect === 'board' || aspect === 'finish') return `${before[aspect]} → ${after[aspect]}`;
      return aspect;
    })
    .join(', ');
}

function panelLines(panels: readonly ListedChange[]): string[] {
  const count = (kind: string) =>
    panels.reduce((sum, panel) => (panel.kind === kind ? sum + panel.count : sum), 0);
  const head = `panels: ${kinds.map((kind) => `${count(kind)} ${kind}`).join(', ')}`;
  const others = panels.filter(({ kind }) => kind !== 'same');
  if (others.length === 0) return [head];
  const rows = kinds.slice(1).flatMap((kind) =>
    others
      .filter((panel) => panel.kind === kind)
      .map((panel) => {
        const { unit, name } = (panel.after ?? panel.before)!;
        const sawn = panel.sawn === 0 ? '' : `${panel.used} of ${panel.sawn}`;
        return [
          kind === 'no longer needed' ? 'gone' : kind,
          shorten(unit, 16),
          shorten(name, 15),
          String(panel.count),
          sawn,
          shorten(differences(panel), 30),
        ];
      }),
  );
  const anySawn = others.some(({ sawn }) => sawn > 0);
  const own = rows.map((row) => (anySawn ? row : row.filter((_, index) => index !== 4)));
  const headings = ['', 'unit', 'panel', 'n', ...(anySawn ? ['used'] : []), 'what'];
  return [
    head,
    '',
    plainTable(headings, own, anySawn ? 'lllrrl' : 'lllrl'),
    ...(anySawn ? ['', 'used: of the pieces that are sawn, how many serve as the same panel'] : []),
  ];
}

/** Labels of offcuts begin alike, so that it is their end that tells them apart. */
function nameOf({ item, id }: MaterialChange): string {
  if (item === 'edging') return shorten(`edging ${id}, m`, 28);
  if (item !== 'offcut') return shorten(id, 28);
  const plain = printable(id);
  return `offcut ${plain.length <= 21 ? plain : `…${plain.slice(-20)}`}`;
}

function amountText(row: MaterialChange, amount: number): string {
  const told = toldAmount(row, amount);
  return row.item === 'edging' ? told.toFixed(3) : String(told);
}

function signed(text: string): string {
  return text.startsWith('-') || Number(text) === 0 ? text : `+${text}`;
}

/** What all that is to be bought costs, as it is sold. */
function costLine(told: readonly MaterialChange[], currency: string): string[] {
  const bought = told.filter(({ toBuy }) => toBuy > 0);
  if (bought.length === 0) return [];
  const sum = bought.reduce((all, { toBuyMinor }) => all + (toBuyMinor ?? 0), 0);
  const unsold = bought.filter(({ toBuyMinor }) => toBuyMinor === null).map(({ id }) => id);
  const text = `to buy: ${money(sum, currency)} in whole packs and rolls, price breaks counted, without delivery`;
  const but = unsold.length === 0 ? '' : `; nobody in the library sells enough of ${unsold.join(', ')}`;
  return [wrap(`${text}${but}`, TERMINAL_WIDTH)];
}

function materialLines(material: readonly MaterialChange[], withStore: boolean, currency: string): string[] {
  const told = material.filter((row) => row.before !== row.after || row.toBuy > 0);
  if (told.length === 0) return ['material: the same, and all of it is there'];
  const anyDone = told.some(({ done }) => done > 0);
  const anyComing = told.some(({ coming }) => (coming ?? 0) > 0);
  const rows = told.map((row) => [
    nameOf(row),
    amountText(row, row.before),
    amountText(row, row.after),
    signed(amountText(row, row.after - row.before)),
    ...(anyDone ? [row.done === 0 ? '' : amountText(row, row.done)] : []),
    ...(withStore ? [amountText(row, row.there ?? 0)] : []),
    ...(anyComing ? [row.coming ? amountText(row, row.coming) : ''] : []),
    row.toBuy === 0 ? '' : amountText(row, row.toBuy),
    row.toBuy === 0 || row.toBuyMinor === null ? '' : money(row.toBuyMinor, ''),
  ]);
  const heads = [
    'material',
    'old',
    'new',
    '',
    ...(anyDone ? ['done'] : []),
    ...(withStore ? ['there'] : []),
    ...(anyComing ? ['coming'] : []),
    'to buy',
    'cost',
  ];
  return [plainTable(heads, rows, `l${'r'.repeat(heads.length - 1)}`), ...costLine(told, currency)];
}

/** What the terminal says of a changed order. */
export function describeChanges(
  titles: readonly [before: string, after: string],
  { panels, material, prices, pricedBy, sawn }: OrderChanges,
  currency: string,
  colours: ReturnType<typeof coloursFor>,
): string {
  const priceRows = prices.map(({ what, beforeMinor, afterMinor }) => [
    what,
    money(beforeMinor, ''),
    money(afterMinor, ''),
    signed(money(afterMinor - beforeMinor, '')),
  ]);
  const withStore = material.some(({ there }) => there !== null);
  const sawnLines =
    sawn === null
      ? []
      : [
          `sawn already: ${counted(sawn.panels, 'panel')} on ${counted(sawn.sheets, 'sheet')}; ` +
            `${sawn.used} serve the new order, ${sawn.panels - sawn.used} do not`,
          '',
        ];
  return [
    colours.bold(`${shorten(titles[0], 36)} → ${shorten(titles[1], 36)}`),
    '',
    ...sawnLines,
    ...panelLines(panels),
    '',
    ...materialLines(material, withStore, currency),
    '',
    plainTable([`price, ${currency}`, 'old', 'new', ''], priceRows, 'lrrr'),
    pricedBy === 'estimate'
      ? 'an estimate by the rates of the library, at its prices for one; not an invoice'
      : 'material only, at the prices for one, since the library has no rates',
    '',
  ].join('\n');
}
