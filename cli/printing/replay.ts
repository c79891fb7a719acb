import { firstOf } from '../../src/basics/findings.ts';
import type { GroupMeasure, ReplayGroupReport } from '../../src/model/report.ts';
import { measurePlan, readPlan, replay } from '../../src/pipeline/replayPlan.ts';
import type { ReplayOptions } from '../commands/replay.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskReader } from '../files/reader.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { reportFindings } from '../terminal/report.ts';
import { printable } from '../terminal/text.ts';

function share(part: bigint, whole: bigint): string {
  return whole === 0n ? '–' : `${(Number((part * 1000n) / whole) / 10).toFixed(1)} %`;
}

/** A group with what replaying it found and what sawing it takes. */
interface Replayed {
  readonly report: ReplayGroupReport;
  readonly measure: GroupMeasure;
}

function metres(um: number): number {
  return Math.round(um / 1e4) / 100;
}

function asData({ report, measure }: Replayed) {
  const areas = Object.fromEntries(
    Object.entries(report.areas).map(([name, um2]) => [`${name}M2`, Number(um2) / 1e12]),
  );
  const { group, sheets, panels, cuts, sawnUm } = report;
  const { fenceSettings, turns, differentSheets, heavy } = measure;
  const { sawnUm: stackedUm, ...sawings } = measure.sawings;
  return {
    group,
    panels,
    sheets,
    cuts,
    metresSawn: metres(sawnUm),
    fenceSettings,
    turns,
    differentSheets,
    sawings: { ...sawings, metresSawn: metres(stackedUm) },
    heavyCuts: heavy.cuts,
    largestPartedM2: Number(heavy.largestUm2) / 1e12,
    areas,
  };
}

function atTheSaw(groups: readonly Replayed[]): string {
  return plainTable(
    ['stock group', 'kinds', 'ways', 'stacks', 'cuts', 'sawn', 'set', 'turns', 'heavy', 'm²'],
    groups.map(({ measure }) => [
      firstOf(printable(measure.group), 26),
      String(measure.differentSheets),
      String(measure.sawings.count),
      String(measure.sawings.stacks),
      String(measure.sawings.cuts),
      `${(measure.sawings.sawnUm / 1e6).toFixed(1)} m`,
      String(measure.sawings.fenceSettings),
      String(measure.turns),
      String(measure.heavy.cuts),
      (Number(measure.heavy.largestUm2) / 1e12).toFixed(2),
    ]),
    'lrrrrrrrrr',
  );
}

function describe(groups: readonly Replayed[]): string {
  const reports = groups.map(({ report }) => report);
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
    'cuts and metres: every sheet by itself; yield, offcuts, dust (kerf and trim) and',
    'waste: of the area of the raw sheets',
    '',
    atTheSaw(groups),
    '',
    'kinds: sheets that differ in a cut; ways: times through the saw, equal ones stacked;',
    'cuts, metres and settings of fence or rail (set) with stacks; heavy: cuts through',
    'more than half of a sheet; m²: largest piece left after the first parting of a sheet',
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
  const measures = measurePlan(readable.value);
  const groups = replayed.reports.map((report, index): Replayed => ({ report, measure: measures[index]! }));
  if (options.json) {
    const document = {
      ok: true,
      exitCode: exitCodes.done,
      groups: groups.map(asData),
      findings: [],
    };
    return print(jsonText(document));
  }
  await print(describe(groups));
  endWith(exitCodes.done);
}
