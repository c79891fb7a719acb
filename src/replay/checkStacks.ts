import { mostInStack } from '../basics/stacks.ts';
import type { PlanGroup, PlanSheet, PlanStack } from '../model/plan.ts';
import { type Faults, mm, toUm } from './pieces.ts';

function checkHeight(group: PlanGroup, stack: PlanStack, name: string, faults: Faults): void {
  const sheets = stack.sheets.reduce((sum, entry) => sum + entry.copies, 0);
  if (sheets <= mostInStack(group.saw, group.thickness)) return;
  const height = group.saw.cuttingHeight;
  const allowed =
    height === undefined || height === null
      ? 'this saw cuts sheets one by one'
      : `this saw cuts no higher than ${mm(toUm(height))}`;
  const each = mm(toUm(group.thickness));
  faults.add('stack-too-high', `${name} is ${sheets} sheets of ${each} high, and ${allowed}`);
}

/** First way in which two sheets that lie in one stack differ, in words; null when they are cut alike. */
function differenceOf(a: PlanSheet, b: PlanSheet): string | null {
  if (a.stock !== b.stock)
    return `sheet ${a.number} is of stock "${a.stock}", sheet ${b.number} of "${b.stock}"`;
  const cut = a.steps.findIndex((step, index) => JSON.stringify(step) !== JSON.stringify(b.steps[index]));
  if (cut >= 0) return `cut ${cut + 1} of sheet ${a.number} is not that of sheet ${b.number}`;
  if (a.steps.length !== b.steps.length) return `sheet ${b.number} has more cuts than sheet ${a.number}`;
  return a.start === b.start ? null : `sheets ${a.number} and ${b.number} are called by different names`;
}

/**
 * Sheets that are sawn together: no stack is higher than the saw cuts, all its sheets are of one stock and alike in
 * every cut, and no sheet lies in more stacks than there are copies of it.
 */
export function checkStacks(group: PlanGroup, faults: Faults): void {
  const byNumber = new Map(group.sheets.map((sheet) => [sheet.number, sheet]));
  const used = new Map<number, number>();
  for (const [index, stack] of (group.stacks ?? []).entries()) {
    const name = `stack ${index + 1}`;
    checkHeight(group, stack, name, faults);
    let first: PlanSheet | undefined;
    for (const { number, copies } of stack.sheets) {
      const sheet = byNumber.get(number);
      if (sheet === undefined) {
        faults.add('stack-wrong', `${name} holds sheets of cut plan ${number}, which does not exist`);
        continue;
      }
      used.set(number, (used.get(number) ?? 0) + copies * stack.times);
      first ??= sheet;
      const difference = differenceOf(first, sheet);
      if (difference !== null)
        faults.add('stack-wrong', `the sheets of ${name} are not cut alike: ${difference}`);
    }
  }
  for (const [number, count] of used) {
    const { copies } = byNumber.get(number)!;
    if (count > copies) {
      faults.add(
        'stack-wrong',
        `${count} sheets of cut plan ${number} lie in stacks, but it has only ${copies}`,
      );
    }
  }
}
