import { errorFinding } from '../basics/findings.ts';
import type { Finding } from '../model/finding.ts';
import type { PlanFile } from '../model/plan.ts';

/** More findings than this help nobody. */
const MOST_FAULTS = 50;

/** One piece of a panel, as lists and labels tell it. */
function named(number: number, piece: number): string {
  return `${number}/${piece}`;
}

/**
 * Of a later plan of a job: as many pieces of a panel are named as are sawn, and no piece bears the number and place of
 * another, sawn before or now; a recut names as many spoiled pieces as it saws.
 */
export function checkLabels(plan: PlanFile, file: string): Finding[] {
  const findings: Finding[] = [];
  const say = (text: string) => {
    // Names in a plan may hold line breaks; a finding is one line.
    const message = `${text}.`.replace(/[\s\p{Cc}]+/gu, ' ');
    if (findings.length < MOST_FAULTS) findings.push(errorFinding('label-wrong', message, { file }));
  };
  const seen = new Map<string, string>();
  const all = [
    ...plan.groups.flatMap(({ panels }) => panels),
    ...(plan.sawn?.groups ?? []).flatMap(({ panels }) => panels),
  ];
  for (const { id, name, count, label } of all) {
    if (label === undefined) continue;
    const what = `Panel "${name}" ("${id}")`;
    if (label.pieces.length !== count) {
      const text = `${what} is sawn ${count} times, but ${label.pieces.length} of its pieces are named`;
      say(text);
    }
    for (const piece of label.pieces) {
      const one = named(label.number, piece);
      const before = seen.get(one);
      if (before !== undefined) {
        say(`${what} and panel "${before}" both have piece ${one}`);
      }
      seen.set(one, id);
    }
  }
  if (plan.recut === undefined) return findings;
  const sawn = plan.groups.flatMap(({ panels }) => panels).reduce((sum, { count }) => sum + count, 0);
  if (sawn !== plan.recut.spoiled.length) {
    const text = `${plan.recut.spoiled.length} panels are spoiled, but ${sawn} are sawn anew`;
    say(text);
  }
  return findings;
}
