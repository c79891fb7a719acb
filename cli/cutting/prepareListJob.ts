import { join } from 'node:path';
import { nearestWord } from '../../src/basics/nearestWord.ts';
import type { Checked } from '../../src/model/finding.ts';
import { prepareList, type SawWithTrim } from '../../src/pipeline/prepareList.ts';
import { libraryOfCommand } from '../files/libraryFolder.ts';
import { loadLibrary } from '../files/loadLibrary.ts';
import { diskReader } from '../files/reader.ts';
import { type JobOptions, nameOfList, type PreparedJob } from './prepareJobs.ts';

/** Usual for a panel saw; said in `--help`. */
const USUAL_KERF_UM = 3200;
const USUAL_TRIM_UM = 10_000;
/** Worth a place in the rack when the saw's file says nothing else. */
const LEAST_OFFCUT = { lengthUm: 400_000, widthUm: 200_000 };

function sawOfOptions(options: JobOptions): SawWithTrim {
  const trim = options.trim ?? USUAL_TRIM_UM;
  return {
    name: 'panel saw',
    kerfUm: options.kerf ?? USUAL_KERF_UM,
    firstCut: 'either',
    turns: null,
    smallestPartUm: 0,
    leastOffcut: LEAST_OFFCUT,
    longestCutUm: null,
    cuttingHeightUm: null,
    trimUm: { left: trim, right: trim, near: trim, far: trim },
  };
}

async function sawFor(options: JobOptions): Promise<Checked<SawWithTrim>> {
  const name = options.saw;
  if (name === undefined) return { ok: true, value: sawOfOptions(options), findings: [] };
  const folder = await libraryOfCommand(options.library);
  if (!folder.ok) return folder;
  const library = await loadLibrary(folder.value);
  if (!library.ok) return library;
  const saw = library.value.saws.get(name);
  if (saw !== undefined) return { ok: true, value: saw, findings: library.findings };
  const known = [...library.value.saws.keys()];
  const nearest = nearestWord(name, known);
  return {
    ok: false,
    findings: [
      {
        code: 'unknown-word',
        severity: 'error',
        message: `\`${name}\` is not a saw of this library.`,
        place: { file: folder.value, field: '--saw' },
        found: name,
        expected: known.join(', '),
        ...(nearest === undefined ? {} : { nearest }),
      },
    ],
  };
}

/** Reads a plain list of panels and one of sheets up to stock groups. */
export async function prepareListJob(
  panelsFile: string,
  sheetsFile: string,
  options: JobOptions,
): Promise<Checked<PreparedJob>> {
  const panels = await diskReader.text(panelsFile, 'list');
  const sheets = await diskReader.text(sheetsFile, 'list');
  const saw = await sawFor(options);
  if (!panels.ok || !sheets.ok || !saw.ok) {
    return { ok: false, findings: [...panels.findings, ...sheets.findings, ...saw.findings] };
  }
  const name = nameOfList(panelsFile);
  const job = prepareList(
    name,
    { file: panelsFile, text: panels.value },
    { file: sheetsFile, text: sheets.value },
    saw.value,
  );
  if (!job.ok) return job;
  const folder = join(options.out, name);
  return { ok: true, value: { job: job.value, file: panelsFile, folder }, findings: job.findings };
}
