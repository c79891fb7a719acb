import { panelText } from './subject.ts';

/** A panel by its number in the cutting list. */
export interface NumberedName {
  readonly number: number;
  readonly name: string;
  readonly unit: string;
}

/** So many panels that follow each other in number and name are told by the first and the last. */
const LEAST_RUN = 4;

const NUMBERED = /^(.* )(\d+)$/;

/** Whether a panel comes right after another: the next number, and the next of the same name in the same unit. */
function follows(before: NumberedName, next: NumberedName): boolean {
  const [, name, count] = NUMBERED.exec(before.name) ?? [];
  const [, nextName, nextCount] = NUMBERED.exec(next.name) ?? [];
  return (
    before.unit === next.unit &&
    next.number === before.number + 1 &&
    name !== undefined &&
    name === nextName &&
    Number(nextCount) === Number(count) + 1
  );
}

/** `80 slat 1, roof bed` for each panel, long runs in one: `80–93 slat 1–14, roof bed`. */
export function runsOfNames(panels: readonly NumberedName[]): string[] {
  const runs: NumberedName[][] = [];
  for (const panel of panels) {
    const run = runs.at(-1);
    if (run !== undefined && follows(run.at(-1)!, panel)) run.push(panel);
    else runs.push([panel]);
  }
  return runs.flatMap((run) => {
    const [first, last] = [run[0]!, run.at(-1)!];
    if (run.length < LEAST_RUN) return run.map((panel) => `${panel.number} ${panelText(panel)}`);
    const name = `${first.name}–${NUMBERED.exec(last.name)![2]}`;
    return [`${first.number}–${last.number} ${panelText({ name, unit: first.unit })}`];
  });
}
