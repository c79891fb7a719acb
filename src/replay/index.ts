import { readPlan } from '../basics/readPlan.ts';
import type { Finding } from '../model/finding.ts';
import type { ReplayGroupReport } from '../model/report.ts';
import { checkGroup } from './checkGroup.ts';
import { checkLabels } from './checkLabels.ts';
import { Faults } from './pieces.ts';

export { measurePlan } from './measurePlan.ts';

export interface Replay {
  /** True when the plan can be sawn as written and gives exactly what its list asks for. */
  readonly ok: boolean;
  readonly findings: readonly Finding[];
  /** One per group, in order; empty when the text is no plan. */
  readonly reports: readonly ReplayGroupReport[];
}

/**
 * Saws a written plan in simulation, from the raw sheets, and believes nothing in it: every cut goes right across a
 * piece that exists, kerf and trim are taken off, sheets are used as often as there are, every panel comes out as often
 * as it is wanted, in its exact size, its grain the right way, matched panels from one blank in order; pieces and saw
 * dust add up to the sheet to the square micrometre, the rules of the saw are kept, and the bound follows from its
 * certificate. `file` is only used to say where. Never throws on what a text may hold.
 */
export function replay(planText: string, file = 'plan'): Replay {
  const read = readPlan(planText, file);
  if (!read.ok) return { ok: false, findings: read.findings, reports: [] };
  const findings: Finding[] = [];
  const reports: ReplayGroupReport[] = [];
  const seen = new Set<string>();
  for (const group of read.value.groups) {
    const faults = new Faults(file, group.id);
    if (seen.has(group.id)) faults.add('id-used-twice', 'two groups have this id');
    seen.add(group.id);
    reports.push(checkGroup(group, faults));
    findings.push(...faults.findings);
  }
  findings.push(...checkLabels(read.value, file));
  return { ok: findings.length === 0, findings, reports };
}
