import { areaBound } from '../../src/bounds/index.ts';
import type { Finding } from '../../src/model/finding.ts';
import type { Formula, LayoutDefinition, Library, ParameterDefinition } from '../../src/model/library.ts';
import type { Nest } from '../../src/model/nest.ts';
import type { Order } from '../../src/model/order.ts';
import type { StockGroup } from '../../src/model/stock.ts';
import { nest } from '../../src/nesting/index.ts';
import { provePlan } from '../../src/pipeline/makePapers.ts';
import { prepareOrder } from '../../src/pipeline/prepareOrder.ts';
import { demoFiles, demoRoot, type Furnished, formula, furnish, must } from './demoVan.ts';
import { allPairs, pairwise } from './pairwise.ts';

/** What was chosen, in words, and what came of it. */
export interface Tried {
  /** `name value` of each choice. */
  readonly words: readonly string[];
  readonly order: Order;
  readonly furnished: Furnished;
  readonly errors: readonly Finding[];
}

/** The values of a choice that are tried; null is the default. Of a number its least, its default and its most. */
function valuesOf(choice: ParameterDefinition): (Formula | null)[] {
  if (choice.kind === 'choice') return choice.choices.map((word) => formula(word));
  return [
    null,
    ...[choice.least, choice.most].filter((bound) => bound !== null && bound.text !== choice.default.text),
  ];
}

/** A layout in a vehicle; `base` gives the boards. */
export interface Asked {
  readonly layout: LayoutDefinition;
  readonly vehicle: string;
  readonly base: Order;
  readonly library: Library;
}

/** With the defaults, then with choices that hold every pair of values once; each is worked out and checked. */
export function tryAllPairs(asked: Asked): Tried[] {
  const values = asked.layout.choices.map(valuesOf);
  const rows = pairwise(values.map((list) => list.length));
  return [[], ...rows.map((row) => row.map((value, index) => values[index]![value]!))].map((row) =>
    tryOne(asked, row),
  );
}

/** Each pair of values that stands in none of the `passed`, all else as by default. */
export function tryPairsLeft(asked: Asked, passed: readonly Tried[]): Tried[] {
  const { choices } = asked.layout;
  const values = choices.map(valuesOf);
  const had = new Set(passed.flatMap(({ words }) => wordPairs(words)));
  const tried: Tried[] = [];
  for (const pair of allPairs(values.map((list) => list.length))) {
    const [a, valueA, b, valueB] = pair.split(' ').map(Number) as [number, number, number, number];
    const row = choices.map((_, index) =>
      index === a ? values[a]![valueA]! : index === b ? values[b]![valueB]! : null,
    );
    if (had.has(wordPairs([word(choices[a]!, row[a]!), word(choices[b]!, row[b]!)])[0]!)) continue;
    const one = tryOne(asked, row);
    tried.push(one);
    if (one.errors.length === 0) for (const each of wordPairs(one.words)) had.add(each);
  }
  return tried;
}

/** Whether a value, in words, can be had together with some two other values. */
export function canBeHadWithTwoMore(asked: Asked, wanted: string): boolean {
  const { choices } = asked.layout;
  const values = choices.map(valuesOf);
  const at = choices.findIndex((choice, index) =>
    values[index]!.some((value) => word(choice, value) === wanted),
  );
  const wish = values[at]!.find((value) => word(choices[at]!, value) === wanted)!;
  return allPairs(values.map((list) => list.length)).some((pair) => {
    const [a, valueA, b, valueB] = pair.split(' ').map(Number) as [number, number, number, number];
    if (a === at || b === at) return false;
    const row = choices.map((_, index) =>
      index === at ? wish : index === a ? values[a]![valueA]! : index === b ? values[b]![valueB]! : null,
    );
    return tryOne(asked, row).errors.length === 0;
  });
}

/** How many pairs of values stand in one of the `passed` at least, and how many there are. */
export function pairsHad(
  layout: LayoutDefinition,
  passed: readonly Tried[],
): { readonly had: number; readonly all: number } {
  const all = allPairs(layout.choices.map((choice) => valuesOf(choice).length)).length;
  return { had: new Set(passed.flatMap(({ words }) => wordPairs(words))).size, all };
}

function wordPairs(words: readonly string[]): string[] {
  return words.flatMap((a, index) => words.slice(index + 1).map((b) => `${a}, ${b}`));
}

/** `name value` of each word that may be chosen. The least and most of a number may well need other choices beside it. */
export function choiceWords(layout: LayoutDefinition): string[] {
  return layout.choices.flatMap((choice) =>
    choice.kind === 'choice' ? valuesOf(choice).map((value) => word(choice, value)) : [],
  );
}

/** `name value` of the least and the most of each number. */
export function endWords(layout: LayoutDefinition): string[] {
  return layout.choices.flatMap((choice) =>
    choice.kind === 'choice'
      ? []
      : valuesOf(choice).flatMap((value) => (value === null ? [] : [word(choice, value)])),
  );
}

/** `name value`, `name` alone for a number left at its default. */
function word(choice: ParameterDefinition, value: Formula | null): string {
  if (value !== null) return `${choice.name} ${value.text}`;
  return choice.kind === 'choice' ? `${choice.name} ${choice.default}` : choice.name;
}

function tryOne(asked: Asked, values: readonly (Formula | null)[]): Tried {
  const { layout, vehicle, base, library } = asked;
  const chosen = layout.choices.flatMap((choice, index) => {
    const value = values[index] ?? null;
    return value === null ? [] : [[choice.name, value] as const];
  });
  const order = { ...base, layout: layout.id, vehicle, choices: new Map(chosen), changes: [] };
  const furnished = furnish(order, library);
  return {
    words: layout.choices.map((choice, index) => word(choice, values[index] ?? null)),
    order,
    furnished,
    errors: furnished.findings.filter(({ severity }) => severity === 'error'),
  };
}

/** Findings of the replay of an order's plan, which was searched for a moment only, and how many panels it holds. */
export function sawn(
  { order }: Pick<Tried, 'order'>,
  library: Library,
): { findings: readonly Finding[]; panels: number } {
  const job = must(prepareOrder(orderText(order), `${demoRoot}/orders/tried.yaml`, library));
  const nests = job.groups.map(nestQuickly);
  const proven = provePlan(job, nests, 1);
  if (!proven.ok) return { findings: proven.findings, panels: 0 };
  return { findings: [], panels: proven.plan.groups.reduce((sum, group) => sum + group.panels.length, 0) };
}

/** Nests by what is nested: choices leave many stock groups as they are. */
const nested = new Map<string, Nest>();

function nestQuickly(group: StockGroup): Nest {
  const key = JSON.stringify(group);
  const known = nested.get(key);
  if (known !== undefined) return known;
  // The first search alone: what is to be seen here is that it can be sawn, not how well.
  const outcome = nest(group, areaBound(group), { seed: 1, workLimit: 0, finish: 'as found' });
  if (!outcome.ok) throw new Error(`stock group ${group.id} was not nested`);
  nested.set(key, outcome.nest);
  return outcome.nest;
}

/** The order as a person would write it, with boards and finishes of the first demonstration order. */
function orderText(order: Order): string {
  const demo = demoFiles().get(`${demoRoot}/orders/demo-long.yaml`)!;
  const roles = demo.slice(demo.indexOf('roles:'), demo.indexOf('changes:'));
  const choices = [...order.choices].map(([name, { text }]) => `  ${name}: ${text}\n`).join('');
  return `title: Tried
library: demo-van
layout: ${order.layout}
vehicle: ${order.vehicle}
saw: panel-saw
${choices === '' ? '' : `choices:\n${choices}`}${roles}`;
}

/** Those that every check let through. */
export function passing(tried: readonly Tried[]): Tried[] {
  return tried.filter(({ errors }) => errors.length === 0);
}

/** `count` of them, spread evenly over all, the first and the last among them. */
export function spread<T>(all: readonly T[], count: number): T[] {
  if (all.length <= count) return [...all];
  return Array.from(
    { length: count },
    (_, index) => all[Math.round((index * (all.length - 1)) / (count - 1))]!,
  );
}

/** One line for each layout and vehicle. */
export function countLine(name: string, tried: readonly Tried[]): string {
  const passed = passing(tried).length;
  return `${name}: ${tried.length} combinations of choices, ${passed} pass, ${tried.length - passed} are refused`;
}
