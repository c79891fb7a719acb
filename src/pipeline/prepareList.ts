import { makeStockGroups, type SawWithTrim } from '../demands/index.ts';
import { matchLists, readPanelList, readSheetList } from '../lists/index.ts';
import type { Checked } from '../model/finding.ts';
import { type Job, placedIn } from './job.ts';

export type { SawWithTrim } from '../demands/index.ts';

/** A text with the name of its file, to show. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** From the texts of a panel list and a sheet list to stock groups that can be nested. Findings of both come at once. */
export function prepareList(
  name: string,
  panels: NamedText,
  sheets: NamedText,
  saw: SawWithTrim,
): Checked<Job> {
  const parts = readPanelList(panels.text, panels.file);
  const supplies = readSheetList(sheets.text, sheets.file);
  const read = [...parts.findings, ...supplies.findings];
  if (!parts.ok || !supplies.ok) return { ok: false, findings: read };
  const matched = matchLists(parts.value, supplies.value, { panels: panels.file, sheets: sheets.file });
  if (!matched.ok) return { ok: false, findings: [...read, ...matched.findings] };
  const stock = makeStockGroups(matched.value.parts, matched.value.sheets, saw);
  const findings = [...read, ...matched.findings, ...placedIn(panels.file, stock.findings)];
  if (findings.some((finding) => finding.severity === 'error')) return { ok: false, findings };
  return { ok: true, value: { name, title: name, currency: '', groups: stock.groups }, findings };
}
