/**
 * Times the papers of the demonstration order that are written only when asked for: `npx tsx tests/bench/papersBench.ts`.
 * The clock says how long a person waits; processor time, that of the engine's own threads for compiling and clearing
 * up included, tells more on a machine that does other things too. The first run loads what is needed.
 */
import { loadDrawingTools } from '../../cli/cutting/drawingTools.ts';
import { paperKinds } from '../../cli/papers/kinds.ts';
import { morePapers } from '../../cli/papers/morePapers.ts';
import { makePapers, usualWishes } from '../../src/pipeline/makePapers.ts';
import { stickerFormats } from '../../src/pipeline/stickerFormats.ts';
import { demoJob } from '../documents/book/demoBook.ts';

const { job, proven } = demoJob();
const tools = await loadDrawingTools();
const format = [...stickerFormats.values()][0]!;
const request = {
  job,
  proven,
  tools,
  wishes: usualWishes,
  page: 'A4',
  labels: { format, first: 1 },
} as const;

async function timed(make: () => Promise<ReadonlyMap<string, string | Uint8Array>>): Promise<string> {
  const before = process.cpuUsage();
  const begun = performance.now();
  const papers = await make();
  const waited = (performance.now() - begun) / 1000;
  const { user, system } = process.cpuUsage(before);
  const bytes = [...papers.values()].reduce((sum, paper) => sum + paper.length, 0);
  return `${waited.toFixed(2)} s, ${((user + system) / 1e6).toFixed(2)} s of processor time, ${Math.round(bytes / 1000)} kB`;
}

const panels = proven.groups.reduce((sum, group) => sum + group.panels, 0);
console.log(`${panels} panels; time by the clock, processor time and size, first run and then again`);
for (const run of [1, 2]) {
  console.log(`usual papers ${run}: ${await timed(async () => makePapers(job, proven, tools))}`);
  for (const kind of Object.keys(paperKinds)) {
    console.log(`${kind} ${run}: ${await timed(() => morePapers([kind], request))}`);
  }
}
