import { printMm } from '../../src/basics/lengths.ts';
import type { Panel } from '../../src/model/furniture.ts';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import type { PanelsOptions } from '../commands/panels.ts';
import { readOrderFile } from '../cutting/prepareJobs.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { jsonText, print, printError } from '../terminal/output.ts';
import { plainTable } from '../terminal/plainTable.ts';
import { reportFindings } from '../terminal/report.ts';
import { counted, printable } from '../terminal/text.ts';
import { panelsCsv } from './panelsCsv.ts';

function mm(um: number): number {
  return um / 1000;
}

function asData(panel: Panel) {
  const { number, id, unit, name, role, board, finish, count, grain, edging, massKg } = panel;
  return {
    number,
    id,
    unit,
    name,
    role,
    board,
    finish,
    thickness: mm(panel.thicknessUm),
    finishedLength: mm(panel.finishedLengthUm),
    finishedWidth: mm(panel.finishedWidthUm),
    cutLength: mm(panel.cutLengthUm),
    cutWidth: mm(panel.cutWidthUm),
    count,
    grain,
    edging,
    massKg,
  };
}

function shorten(text: string, most: number): string {
  const plain = printable(text);
  return plain.length <= most ? plain : `${plain.slice(0, most - 1)}…`;
}

/** Which of its four edges are edged, long ones first: `2L1W`. */
function edgedSides(panel: Panel): string {
  const long = panel.edging.alongLength.filter((edging) => edging !== null).length;
  const short = panel.edging.alongWidth.filter((edging) => edging !== null).length;
  return [long > 0 ? `${long}L` : '', short > 0 ? `${short}W` : ''].join('');
}

function asText(title: string, panels: readonly Panel[]): string {
  const byUnit = new Map<string, Panel[]>();
  for (const panel of panels) byUnit.set(panel.unit, [...(byUnit.get(panel.unit) ?? []), panel]);
  const blocks = [...byUnit].map(([unit, its]) => {
    const rows = its.map((p) => [
      String(p.number),
      shorten(p.name, 18),
      printMm(p.cutLengthUm),
      printMm(p.cutWidthUm),
      printMm(p.thicknessUm),
      String(p.count),
      p.grain === 'length' ? '→' : '',
      edgedSides(p),
      shorten(`${p.board} ${p.finish}`, 19),
    ]);
    const head = ['no', 'panel', 'length', 'width', 'thick', 'n', '', 'edged', 'board and finish'];
    return `${shorten(unit, 80)}\n${plainTable(head, rows, 'rlrrrrlll')}`;
  });
  const pieces = panels.reduce((sum, panel) => sum + panel.count, 0);
  const mass = panels.reduce((sum, panel) => sum + panel.count * panel.massKg, 0);
  return [
    shorten(title, 80),
    '',
    blocks.join('\n\n'),
    '',
    `${counted(pieces, 'panel')}, ${mass.toFixed(1)} kg; cut sizes in mm, length along the grain (→)`,
    'edged: how many edges along the length (L) and along the width (W)',
    '',
  ].join('\n');
}

/** Runs `plywright panels`. */
export async function printPanels(file: string, options: PanelsOptions): Promise<void> {
  const read = await readOrderFile(file, options, new Map());
  if (!read.ok) return reportFindings(read.findings, options);
  const { text, library, whatIf } = read.value;
  const furnished = furnishOrder(text, file, library, whatIf);
  if (!furnished.ok) return reportFindings([...read.findings, ...furnished.findings], options);
  const { order, furniture } = furnished.value;
  const panels = furniture.units.flatMap((unit) => unit.panels);
  const findings = [...read.findings, ...furnished.findings];
  if (options.json) {
    const document = {
      ok: true,
      exitCode: 0,
      order: order.id,
      title: order.title,
      panels: panels.map(asData),
      findings,
    };
    return print(jsonText(document));
  }
  if (options.csv) return print(panelsCsv(panels));
  await print(asText(order.title, panels));
  await printError(describeFindings(findings, coloursFor(process.stderr)));
}
