import { shortened } from '../../src/basics/findings.ts';
import type { Advice, AdviceReport, HoldingPanel, OtherSize } from '../../src/pipeline/adviseOrder.ts';
import type { coloursFor } from '../terminal/findings.ts';
import { money } from '../terminal/money.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { counted, printable, TERMINAL_WIDTH, wrap } from '../terminal/text.ts';

type Colours = ReturnType<typeof coloursFor>;

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** For a shell, where a name has spaces. */
function quoted(setting: string): string {
  return /^[\w.=-]+$/.test(setting) ? setting : `'${setting.replaceAll("'", "'\\''")}'`;
}

function adviceLines(advice: Advice, number: number, report: AdviceReport, currency: string): string[] {
  const { changes, sheets, plan, settings } = advice;
  const { now } = report;
  const changed = changes
    .map(({ name, from, to, kind }) => `${printable(name)} ${from} → ${to}${kind === 'length' ? ' mm' : ''}`)
    .join(' and ');
  const told = sheets.map(({ board, finish, sheetsBefore, sheetsAfter, costBeforeMinor, costAfterMinor }) => {
    const of = `${printable(board)} ${printable(finish)}`;
    const less = sheetsBefore - sheetsAfter;
    if (less === 0) {
      const cost = costBeforeMinor - costAfterMinor;
      return `${of}: smaller sheets, ${money(Math.abs(cost), currency)} ${cost > 0 ? 'less' : 'more'}`;
    }
    const word = less > 0 ? 'less' : 'more';
    return `${counted(Math.abs(less), 'sheet')} ${word} of ${of} (${sheetsBefore} → ${sheetsAfter})`;
  });
  const net = now.netMinor - plan.netMinor;
  const saved = `${money(now.sheetsCostMinor - plan.sheetsCostMinor, currency)} less for sheets`;
  const estimate = net >= 0 ? `${money(net, currency)} less` : `${money(-net, currency)} more`;
  const indent = '     ';
  const head = `${String(number).padStart(3)}  ${wrap(`${changed}: ${told.join('; ')}`, TERMINAL_WIDTH - 5, indent)}`;
  const rest = wrap(`${saved}, ${estimate} in all; yield ${percent(plan.yield)}`, TERMINAL_WIDTH - 5, indent);
  const tryIt = settings.map((setting) => `--set ${quoted(setting)}`).join(' ');
  return [head, indent + rest, `${indent}try it with ${tryIt}`];
}

function changesText(report: AdviceReport, currency: string, colours: Colours): string[] {
  const { advice, lookedUpTo, nestings, ruledOut } = report;
  const lines = advice.flatMap((one, index) => adviceLines(one, index + 1, report, currency));
  if (advice.length > 0) lines.unshift(colours.bold('Changes that save, the smallest first'));
  else lines.push('No change within the limits makes the sheets cost less, as far as was found.');
  if (lookedUpTo !== null) {
    const text =
      `The search for changes ended after ${nestings} nestings: those under ${lookedUpTo} mm were looked at, ` +
      'of larger ones not all. --nestings allows more.';
    lines.push(wrap(text, TERMINAL_WIDTH));
  }
  lines.push(wrap(`${counted(ruledOut, 'question')} answered by the bound alone.`, TERMINAL_WIDTH));
  return lines;
}

function panelLines(panel: HoldingPanel, currency: string): string {
  const { board, finish, unit, panels, lengthMm, widthMm } = panel;
  const names = panels.map(printable).join(', ');
  const saves = panel.sheetsBefore - panel.sheetsAfter;
  const what = saves > 0 ? counted(saves, 'sheet') : 'a larger sheet';
  const text =
    `${printable(board)} ${printable(finish)}: ${panels.length > 1 ? 'the row ' : ''}${printable(unit)}/${names}, ` +
    `${lengthMm} × ${widthMm} mm, takes ${what}, ${money(panel.costBeforeMinor - panel.costAfterMinor, currency)}; ` +
    `without it the yield were ${percent(panel.yieldAfter)}, not ${percent(panel.yieldBefore)}`;
  return `  ${wrap(text, TERMINAL_WIDTH - 2, '    ')}`;
}

function sizesText(sizes: readonly OtherSize[]): string {
  const rows = sizes.map((size) => {
    const name = `${printable(size.board)} ${printable(size.finish)}`;
    const cost = size.costMinor === null ? '' : money(size.costMinor, '');
    return [
      shortened(name, 24),
      `${size.lengthMm}×${size.widthMm}`,
      size.sheets === null ? 'no room' : String(size.sheets),
      cost,
      size.yield === null ? '' : percent(size.yield),
      `${size.sheetsNow}: ${money(size.costNowMinor, '')}`,
      size.had === 'offered' ? '' : 'ask for it',
    ];
  });
  return plainTable(['stock group', 'size', 'sheets', 'cost', 'yield', 'now', ''], rows, 'lrrrrrl');
}

/** What the terminal says of advice. */
export function describeAdvice(
  file: string,
  report: AdviceReport,
  currency: string,
  colours: Colours,
): string {
  const { now, panels, sizes } = report;
  const verdict = now.proved
    ? 'proved best'
    : `at least ${money(now.leastCostMinor, currency)} for these panels, so that a saving may partly be a luckier search`;
  const lines = [
    colours.bold(printable(file)),
    wrap(
      `now ${counted(now.sheets, 'sheet')} for ${money(now.sheetsCostMinor, currency)} (${verdict}), ` +
        `yield ${percent(now.yield)}; in all ${money(now.netMinor, currency)} before VAT`,
      TERMINAL_WIDTH,
    ),
    '',
    ...changesText(report, currency, colours),
    '',
    colours.bold('Panels that bring a sheet'),
    ...(panels.length === 0
      ? ['  none: no board would save by one panel less']
      : panels.map((panel) => panelLines(panel, currency))),
  ];
  if (sizes.length > 0) {
    lines.push('', colours.bold('From sheets of one size alone'), sizesText(sizes));
    if (sizes.some(({ had }) => had !== 'offered')) {
      lines.push('ask for it: the library has this size only in another finish of the board');
    }
  }
  return `${lines.join('\n')}\n`;
}
