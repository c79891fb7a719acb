import type { ExactValue } from './exactJson.ts';
import { Fraction } from './fraction.ts';
import { refuse, type Saw } from './pieces.ts';
import type { Written } from './planAsWritten.ts';

/** Stacks of a group: sheets of one size, cut alike, no more than there are and no higher than the saw cuts. */
export function checkStacks(group: Written, saw: Saw, stockOf: (sheet: Written) => Written): void {
  const sheets = new Map(group.parts('sheets').map((sheet) => [`${sheet.number('number')}`, sheet]));
  const stacked = new Map<string, Fraction>();
  for (const stack of group.parts('stacks')) {
    let inStack = Fraction.zero;
    let alike: string | null = null;
    const seen = new Set<string>();
    for (const layer of stack.parts('sheets')) {
      const number = `${layer.number('number')}`;
      const sheet = sheets.get(number) ?? refuse(`a stack has a sheet ${number}`);
      if (seen.has(number)) refuse(`a stack names sheet ${number} twice`);
      seen.add(number);
      const way = wayOfCutting(sheet, stockOf(sheet));
      alike ??= way;
      if (way !== alike) refuse(`sheet ${number} is not cut as its stack is`);
      const copies = layer.number('copies');
      inStack = inStack.plus(copies);
      const total = (stacked.get(number) ?? Fraction.zero).plus(copies.times(stack.number('times')));
      if (total.isMoreThan(sheet.number('copies')))
        refuse(`more of sheet ${number} lie in stacks than there are`);
      stacked.set(number, total);
    }
    const height = inStack.times(group.number('thickness'));
    if (saw.cuttingHeight === null || height.isMoreThan(saw.cuttingHeight))
      refuse(`a stack is ${height} high`);
    if (!height.isPositive()) refuse('sheets of an unknown thickness are stacked');
    if (!inStack.isMoreThan(Fraction.of(1))) refuse('a stack is one sheet');
  }
}

/** Everything that the saw notices of a sheet: its size, every step, where every piece lies. */
function wayOfCutting(sheet: Written, stock: Written): string {
  const asText = (value: ExactValue): string =>
    value instanceof Map
      ? `{${[...value].map(([key, one]) => `${key}:${asText(one)}`).join()}}`
      : Array.isArray(value)
        ? `[${value.map(asText).join()}]`
        : value instanceof Fraction
          ? value.toString()
          : JSON.stringify(value);
  return [
    stock.number('length').toString(),
    stock.number('width').toString(),
    sheet.text('start'),
    ...sheet.list('steps').map(asText),
  ].join('|');
}
