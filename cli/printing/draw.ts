import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { Checked } from '../../src/model/finding.ts';
import { drawFurniture } from '../../src/pipeline/drawFurniture.ts';
import { drawUnitsOfLibrary } from '../../src/pipeline/drawUnitsOfLibrary.ts';
import { furnishUnit } from '../../src/pipeline/furnishUnit.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';
import { furnishOrder } from '../../src/pipeline/prepareOrder.ts';
import type { DrawOptions } from '../commands/draw.ts';
import { loadDrawingTools } from '../cutting/drawingTools.ts';
import { type ReadOrder, readOrderFile } from '../cutting/prepareJobs.ts';
import { safeFileName } from '../files/fileName.ts';
import { libraryOfCommand, shortPath } from '../files/libraryFolder.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { jsonText, print, printError } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import { counted } from '../terminal/text.ts';

/** The order whose boards a unit is drawn with when none is named: the first of the library. */
async function firstOrderOf(named: string | undefined): Promise<Checked<string>> {
  const folder = await libraryOfCommand(named);
  if (!folder.ok) return folder;
  const orders = join(folder.value, 'orders');
  const names = await readdir(orders).catch(() => [] as string[]);
  const first = names.filter((name) => /\.ya?ml$/i.test(name)).sort()[0];
  if (first !== undefined) return { ok: true, value: shortPath(join(orders, first)), findings: [] };
  return {
    ok: false,
    findings: [
      {
        code: 'file-missing',
        severity: 'error',
        message: 'The library has no order that says which boards to draw the unit with.',
        place: { file: orders },
        advice: 'name an order of your own: plywright draw ORDER --unit UNIT',
      },
    ],
  };
}

/** Drawings as files by name, and the folder that they go to. */
interface Drawn {
  readonly papers: ReadonlyMap<string, string>;
  readonly folder: string;
}

/** From what was asked to drawings. */
async function drawAsked(named: string | undefined, options: DrawOptions): Promise<Checked<Drawn>> {
  const file = named === undefined ? await firstOrderOf(options.library) : null;
  if (file !== null && !file.ok) return file;
  const path = file?.value ?? named!;
  // With a unit drawn by itself, what is set is of the unit.
  const { set: _ofUnit, ...asOrder } = options;
  const read = await readOrderFile(path, options.unit === undefined ? options : asOrder, new Map());
  if (!read.ok) return read;
  const { text, library, whatIf } = read.value;
  const wishes = { language: options.language, lengths: options.lengths };
  const into = (name: string) => join(options.out ?? 'out', safeFileName(name), 'drawings');
  if (options.allUnits) {
    const tools = await loadDrawingTools();
    const units = drawUnitsOfLibrary({ text, file: path, whatIf }, library, tools, wishes);
    const findings = [...read.findings, ...units.findings];
    if (!units.ok) return { ok: false, findings };
    return { ok: true, value: { papers: units.value, folder: into(library.id) }, findings };
  }
  const ordered = furnish(read.value, path, options);
  const findings = [...read.findings, ...ordered.findings];
  if (!ordered.ok) return { ok: false, findings };
  const what = options.unit === undefined ? 'units and layout' : 'units only';
  const papers = drawFurniture(ordered.value, what, await loadDrawingTools(), wishes);
  return { ok: true, value: { papers, folder: into(options.unit ?? ordered.value.order.id) }, findings };
}

function furnish(
  { text, library, whatIf }: ReadOrder,
  path: string,
  { unit, set = [] }: DrawOptions,
): Checked<OrderedFurniture> {
  if (unit === undefined) return furnishOrder(text, path, library, whatIf);
  const values = new Map(
    set.map((each) => {
      const at = each.indexOf('=');
      return [each.slice(0, at), each.slice(at + 1)] as const;
    }),
  );
  return furnishUnit({ unit, set: values }, text, path, library, whatIf);
}

/** Runs `plywright draw`. */
export async function draw(order: string | undefined, options: DrawOptions): Promise<void> {
  const drawn = await drawAsked(order, options);
  if (!drawn.ok) return reportFindings(drawn.findings, options);
  const { papers, folder } = drawn.value;
  const existing = options.replace ? 'replace edited' : 'keep edited';
  const refused = await diskWriter.papers(folder, papers, existing);
  if (refused.length > 0) return reportFindings([...drawn.findings, ...refused], options);
  const files = [...papers.keys()].map((name) => `${folder}/${name}`.replaceAll('\\', '/'));
  if (options.json) {
    const document = { ok: true, exitCode: 0, folder, files, findings: drawn.findings };
    return print(jsonText(document));
  }
  await print(`${folder}/: ${counted(files.length, 'drawing')}\n`);
  await printError(describeFindings(drawn.findings, coloursFor(process.stderr)));
}
