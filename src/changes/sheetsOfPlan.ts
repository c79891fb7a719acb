import { errorFinding, listWords, shownText, unknownWord } from '../basics/findings.ts';
import type { Checked, Finding } from '../model/finding.ts';
import type { PlanFile, PlanGroup, PlanSheet, SawnCopies } from '../model/plan.ts';

function copiesFrom1(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index + 1);
}

/** Every sheet of a plan, in the order of its cut plans. */
export function allSheets(plan: Pick<PlanFile, 'groups'>): SawnCopies[] {
  return plan.groups.flatMap(({ id, sheets }) =>
    sheets.map(({ number, copies }) => ({ group: id, number, copies: copiesFrom1(copies) })),
  );
}

/** Copies of a cut plan that are among some sheets, rising. */
function copiesIn(sheets: readonly SawnCopies[], group: string, number: number): Set<number> {
  return new Set(
    sheets.filter((one) => one.group === group && one.number === number).flatMap(({ copies }) => copies),
  );
}

/** The sheets of a plan that are not among others. */
export function sheetsWithout(plan: Pick<PlanFile, 'groups'>, others: readonly SawnCopies[]): SawnCopies[] {
  return allSheets(plan).flatMap(({ group, number, copies }) => {
    const gone = copiesIn(others, group, number);
    const left = copies.filter((copy) => !gone.has(copy));
    return left.length === 0 ? [] : [{ group, number, copies: left }];
  });
}

/** Sheets with each cut plan once and its copies rising. */
export function joinedSheets(plan: Pick<PlanFile, 'groups'>, sheets: readonly SawnCopies[]): SawnCopies[] {
  return sheetsWithout(plan, sheetsWithout(plan, sheets));
}

/** How many sheets these are. */
export function countSheets(sheets: readonly SawnCopies[]): number {
  return sheets.reduce((sum, { copies }) => sum + copies.length, 0);
}

/** Sheets as a command names them: `poplar-15-pale-grey/1x2`. */
export function sheetsInWords(sheets: readonly SawnCopies[]): string[] {
  return sheets.map(({ group, number, copies }) =>
    copies.length === 1 ? `${group}/${number}` : `${group}/${number}x${copies.length}`,
  );
}

interface SheetWord {
  readonly group: string;
  readonly number: number | null;
  readonly count: number | null;
}

/** `GROUP`, `GROUP/2`, `GROUP/2x3`; of a plan with one group `2` and `2x3`. */
function readWord(text: string): SheetWord {
  const match = /^(?:(.*)\/)?(\d{1,6})(?:\s*[x×]\s*(\d{1,6}))?$/i.exec(text);
  if (match === null) return { group: text, number: null, count: null };
  const count = match[3] === undefined ? null : Number(match[3]);
  return { group: match[1] ?? '', number: Number(match[2]), count };
}

function groupMeant(plan: PlanFile, { group }: SheetWord, text: string): PlanGroup | Finding {
  const [only, second] = plan.groups;
  if (group === '' && only !== undefined && second === undefined) return only;
  const found = plan.groups.find(({ id }) => id.toLowerCase() === group.toLowerCase());
  if (found !== undefined) return found;
  const known = plan.groups.map(({ id }) => id);
  if (group !== '') return unknownWord(group, 'a stock group of this plan', known);
  return errorFinding(
    'sheet-unclear',
    `It is not said which stock group \`${shownText(text)}\` is of.`,
    undefined,
    {
      expected: listWords(known.map((id) => `${id}/${text}`)),
    },
  );
}

function tooMany(group: PlanGroup, sheet: PlanSheet, asked: number, left: number): Finding {
  const what = `${group.id}/${sheet.number}`;
  if (left === 0) {
    return errorFinding('sheet-sawn-already', `Sheet ${what} is sawn and booked already.`, undefined, {
      found: `${sheet.copies} of ${sheet.copies} sawn`,
      advice: 'if that booking was wrong, reverse it first: plywright stock history',
    });
  }
  return errorFinding('too-many-sheets', `Of sheet ${what} fewer are left to saw.`, undefined, {
    found: String(asked),
    expected: `at most ${left} of ${sheet.copies}`,
  });
}

function taken(
  group: PlanGroup,
  { number, count }: SheetWord,
  left: readonly SawnCopies[],
): Checked<SawnCopies[]> {
  if (number === null) {
    const own = left.filter((one) => one.group === group.id);
    if (own.length > 0) return { ok: true, value: own, findings: [] };
    const message = `All sheets of ${group.id} are sawn and booked already.`;
    return { ok: false, findings: [errorFinding('sheet-sawn-already', message)] };
  }
  const sheet = group.sheets.find((one) => one.number === number);
  if (sheet === undefined) {
    const message = `The plan has no sheet ${group.id}/${number}.`;
    const expected = `${group.id}/1 to ${group.id}/${group.sheets.length}`;
    return { ok: false, findings: [errorFinding('sheet-unknown', message, undefined, { expected })] };
  }
  const copies = left.find((one) => one.group === group.id && one.number === number)?.copies ?? [];
  const asked = count ?? Math.max(1, copies.length);
  if (asked < 1 || asked > copies.length) {
    return { ok: false, findings: [tooMany(group, sheet, asked, copies.length)] };
  }
  return { ok: true, value: [{ group: group.id, number, copies: copies.slice(0, asked) }], findings: [] };
}

/**
 * The sheets of a plan that people name: `GROUP/2` is cut plan 2 of a stock group with all its sheets that are not sawn yet,
 * `GROUP/2x3` three of them, `GROUP` all that is left of the group. `done` are those sawn before. A sheet that is done, named
 * twice or not there is told.
 */
export function sheetsMeant(
  plan: PlanFile,
  words: readonly string[],
  done: readonly SawnCopies[],
): Checked<SawnCopies[]> {
  const findings: Finding[] = [];
  let meant: SawnCopies[] = [];
  for (const text of words) {
    const word = readWord(text.trim());
    const group = groupMeant(plan, word, text.trim());
    if ('code' in group) {
      findings.push(group);
      continue;
    }
    const some = taken(group, word, sheetsWithout(plan, [...done, ...meant]));
    if (some.ok) meant = [...meant, ...some.value];
    else findings.push(...some.findings);
  }
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: joinedSheets(plan, meant), findings };
}
