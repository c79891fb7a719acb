import type { Panel } from '../../model/furniture.ts';

/** Numbers with names, those of panels called alike together: `12 bottom, 14–17 slat`. */
export function panelsInWords(panels: readonly Panel[]): string {
  const groups = new Map<string, number[]>();
  for (const { baseName, number } of panels) groups.set(baseName, [...(groups.get(baseName) ?? []), number]);
  return [...groups].map(([name, numbers]) => `${numbersInWords(numbers)}\u00a0${name}`).join(', ');
}

/** Three or more that follow each other as the first and the last. */
function numbersInWords(numbers: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last !== undefined && last[1] === number - 1) last[1] = number;
    else runs.push([number, number]);
  }
  const words = runs.flatMap(([from, to]) =>
    to - from > 1 ? [`${from}–${to}`] : from === to ? [String(from)] : [String(from), String(to)],
  );
  return words.join(', ');
}
