import type { ReplayGroupReport } from '../../src/model/report.ts';
import { readPlan, replay } from '../../src/pipeline/replayPlan.ts';
import type { ReplayOptions } from '../commands/replay.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskReader } from '../files/reader.ts';
import { endWith, print, printError } from '../terminal/output.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable } from '../terminal/text.ts';

function share(part: bigint, whole: bigint): string {
  return whole === 0n ? '–' : `${(Number((part * 1000n) / whole) / 10).toFixed(1)} %`;
}

function asData(report: ReplayGroupReport) {
  const areas = Object.fromEntries(
    Object.entries(report.areas).map(([name, um2]) => [`${name}M2`, Number(um2) / 1e12]),
  );
  const { group, sheets, panels, cuts, sawnUm } = report;
  return { group, panels, sheets, cuts, metresSawn: Math.round(sawnUm / 1e4) / 100, areas };
}

function describe(reports: readonly ReplayGroupReport[]): string {
  const table = plainTable(
    ['stock group', 'panels', 'sheets', 'cuts', 'sawn', 'yield', 'offcuts', 'dust', 'waste'],
    reports.map(({ group, panels, sheets, cuts, sawnUm, areas }) => [
      printable(group).slice(0, 26),
      String(panels),
      String(sheets),
      String(cuts),
      `${(sawnUm / 1e6).toFixed(1)} m`,
      share(areas.panels, areas.sheets),
      share(areas.offcuts, areas.sheets),
      share(areas.kerf + areas.trim, areas.sheets),
      share(areas.waste, areas.sheets),
    ]),
    'lrrrrrrrr',
  );
  return [
    'The plan can be sawn: every panel comes out once, in its size, grain the right way.',
    '',
    table,
    '',
    'yield, offcuts, dust (kerf and trim) and waste: of the area of the raw sheets',
    '',
  ].join('\n');
}

/** Runs `plywright replay`: saws a plan file again and sets the exit code. */
export async function replayFile(path: string, options: ReplayOptions): Promise<void> {
  const text = await diskReader.text(path, 'plan');
  if (!text.ok) return reportFindings(text.findings, options);
  const readable = readPlan(text.value, path);
  if (!readable.ok) return reportFindings(readable.findings, options, exitCodes.wrongInput);
  const replayed = replay(text.value, path);
  if (!replayed.ok) {
    await printError(`${printable(path)} cannot be sawn as it is written:\n\n`);
    return reportFindings(replayed.findings, options, exitCodes.failedReplay);
  }
  if (options.json) {
    const document = {
      ok: true,
      exitCode: exitCodes.done,
      groups: replayed.reports.map(asData),
      findings: [],
    };
    return print(`${JSON.stringify(document, null, 2)}\n`);
  }
  await print(describe(replayed.reports));
  endWith(exitCodes.done);
}
