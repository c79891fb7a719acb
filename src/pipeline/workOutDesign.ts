import type { Library } from '../model/library.ts';
import type { LinearSolver } from '../model/linearSolver.ts';
import type { Nest, NestOutcome } from '../model/nest.ts';
import type { StockGroup } from '../model/stock.ts';
import type { WorkedOut } from '../model/sweep.ts';
import type { FileText, WhatIf } from '../model/whatIf.ts';
import { designOf } from './compareDesigns.ts';
import { groupContent } from './groupContent.ts';
import { provePlan } from './makePapers.ts';
import { describeNestFailure } from './nestFailures.ts';
import { nestInParts } from './nestGroup.ts';
import { prepareOrder } from './prepareOrder.ts';

/** How long and by which seed is searched, and groups that were nested before, by what they are made of. */
export interface DesignSearch {
  readonly seed: number;
  readonly workLimit: number;
  readonly nested: Map<string, NestOutcome>;
}

function nestOnce(
  group: StockGroup,
  solver: LinearSolver,
  { seed, workLimit, nested }: DesignSearch,
): NestOutcome {
  const content = groupContent(group);
  const known = nested.get(content);
  if (known !== undefined) return known;
  const outcome = nestInParts(group, solver, { seed, workLimit });
  nested.set(content, outcome);
  return outcome;
}

/**
 * An order from its text to the figures of its plan, which is replayed, or why it cannot be built. Each stock group is
 * nested as `plywright cut` does with the same seed and moves, so that the figures are those of `cut`; groups that are the
 * same in several ways are nested once. Throws when a plan does not pass its replay.
 */
export function workOutDesign(
  name: string,
  { text, file }: FileText,
  library: Library,
  whatIf: WhatIf,
  solver: LinearSolver,
  search: DesignSearch,
): WorkedOut {
  const job = prepareOrder(text, file, library, whatIf);
  if (!job.ok) {
    const first = job.findings.find(({ severity }) => severity === 'error');
    return { ok: false, refused: first?.message ?? 'It cannot be built.' };
  }
  const nests: Nest[] = [];
  for (const group of job.value.groups) {
    const outcome = nestOnce(group, solver, search);
    if (!outcome.ok) {
      const [finding] = describeNestFailure(group, outcome.failure, file);
      return { ok: false, refused: finding?.message ?? `The group ${group.id} cannot be cut.` };
    }
    nests.push(outcome.nest);
  }
  const proof = provePlan(job.value, nests, search.seed);
  if (!proof.ok) throw new Error(proof.findings[0]?.message ?? 'a plan did not pass its replay');
  return { ok: true, design: designOf(name, job.value.ordered!, proof.plan) };
}
