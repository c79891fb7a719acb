import { z } from 'zod';
import type { Checked, Finding } from '../model/finding.ts';
import { type PlanFile, planFile } from '../model/plan.ts';
import { FILE_VERSION, otherVersion } from './fileVersion.ts';
import { shortened, shownText } from './findings.ts';
import { jsonFault } from './jsonFault.ts';

/** Longest plan text that is read, in characters: some thousand sheets of a hundred panels. */
export const MAX_PLAN_TEXT = 64 * 1024 * 1024;
/** More findings than this help nobody. */
const MAX_FINDINGS = 50;

/** Most of what the schema says of a field that is printed: it may repeat a name from the file of any length. */
const MAX_SAID = 200;

/** The field in words a person can follow: `groups › 1 › sheets › 3 › steps › 7 › fence`, counted from 1. */
function fieldOf(path: readonly PropertyKey[]): string {
  return path.map((step) => (typeof step === 'number' ? String(step + 1) : String(step))).join(' › ');
}

function saidOf({ message }: z.core.$ZodIssue): string {
  const oneLine = message.slice(0, 2 * MAX_SAID).replace(/[\s\p{Cc}\p{Cs}]+/gu, ' ');
  return shortened(oneLine, MAX_SAID + 1);
}

function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  let value = document;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<PropertyKey, unknown>)[step];
  }
  return value;
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = JSON.stringify(value);
  return shortened(text, 81);
}

function schemaFinding(issue: z.core.$ZodIssue, document: unknown, file: string): Finding {
  const found = shown(valueAt(document, issue.path));
  const field = fieldOf(issue.path);
  return {
    code: 'plan-field-wrong',
    severity: 'error',
    message: `${field === '' ? 'The file' : `Field ${field}`} is not as a plan file has it: ${saidOf(issue)}.`,
    place: { file, field },
    found,
  };
}

/** Fields whose numbers are lengths; each must be in whole micrometres. */
const LENGTH_FIELDS = new Set([
  'take',
  'fence',
  'length',
  'width',
  'finishedLength',
  'finishedWidth',
  'left',
  'right',
  'near',
  'far',
  'thickness',
  'kerf',
  'smallestPart',
  'longestCut',
  'cuttingHeight',
]);

/** What JSON can say and a text cannot be: half of a letter that is written as a pair. */
const HALF_LETTER = /\p{Cs}/u;

/** What the schema cannot say: lengths finer than the saw is set to, and texts that are none. */
function findWrongValues(value: unknown, path: PropertyKey[], file: string, findings: Finding[]): void {
  if (findings.length >= MAX_FINDINGS || typeof value !== 'object' || value === null) return;
  for (const [key, inner] of Object.entries(value)) {
    const step = Array.isArray(value) ? Number(key) : key;
    if (typeof inner === 'string' && HALF_LETTER.test(inner)) {
      findings.push({
        code: 'plan-text-broken',
        severity: 'error',
        message: `Field ${fieldOf([...path, step])} holds half of a letter.`,
        place: { file, field: fieldOf([...path, step]) },
        found: shown(inner),
        expected: 'whole letters (Unicode characters)',
      });
    }
    if (typeof inner === 'number' && LENGTH_FIELDS.has(key) && Math.round(inner * 1000) / 1000 !== inner) {
      findings.push({
        code: 'plan-length-too-fine',
        severity: 'error',
        message: `Field ${fieldOf([...path, step])} is finer than a thousandth of a millimetre.`,
        place: { file, field: fieldOf([...path, step]) },
        found: String(inner),
        expected: 'millimetres with at most three decimals',
      });
    }
    findWrongValues(inner, [...path, step], file, findings);
  }
}

function refuse(file: string, code: string, message: string, more: Partial<Finding> = {}): Checked<PlanFile> {
  return { ok: false, findings: [{ code, severity: 'error', message, place: { file }, ...more }] };
}

/** Where a text stops being JSON, and what stands there. */
function notJson(text: string, file: string): Partial<Finding> {
  const at = jsonFault(text) ?? text.length;
  const before = text.slice(0, at).split('\n');
  const rest = text.slice(at, at + 30).split('\n')[0]!;
  return {
    place: { file, line: before.length, column: before.at(-1)!.length + 1 },
    found: at === text.length ? 'the end of the file' : shownText(rest),
    advice: 'Take a plan file as the program wrote it; make it anew if it was changed or cut off.',
  };
}

/**
 * Reads the text of a plan file. Everything that is not as the schema says comes back as findings with the path of
 * the field, at most 50; unknown fields are errors. `file` is only used to say where.
 */
export function readPlan(text: string, file = 'plan'): Checked<PlanFile> {
  if (text.length > MAX_PLAN_TEXT) {
    return refuse(file, 'plan-too-large', 'The plan file is too large to read.', {
      found: `${text.length} characters`,
      expected: `at most ${MAX_PLAN_TEXT}`,
    });
  }
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    return refuse(file, 'plan-not-json', 'The plan file is not JSON.', notJson(text, file));
  }
  const { format, version } = (document ?? {}) as { format?: unknown; version?: unknown };
  if (format === 'plywright plan' && version !== undefined && version !== FILE_VERSION) {
    return { ok: false, findings: [otherVersion('a plan file', version, { file, field: 'version' })] };
  }
  const read = z.safeParse(planFile, document);
  if (!read.success) {
    const issues = read.error.issues.slice(0, MAX_FINDINGS);
    return { ok: false, findings: issues.map((issue) => schemaFinding(issue, document, file)) };
  }
  const findings: Finding[] = [];
  findWrongValues(read.data, [], file, findings);
  if (findings.length > 0) return { ok: false, findings };
  return { ok: true, value: read.data, findings: [] };
}
