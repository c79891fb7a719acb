import { join } from 'node:path';
import type { Checked, Finding } from '../../src/model/finding.ts';
import type { PlanFile } from '../../src/model/plan.ts';
import {
  type Quoted,
  type QuoteWishes,
  quotationCsv,
  quotationPages,
  quoteOrder,
  sourceText,
} from '../../src/pipeline/makeQuote.ts';
import type { QuoteOptions } from '../commands/quote.ts';
import { listenForInterrupts } from '../cutting/interrupts.ts';
import { type PreparedJob, prepareJobs } from '../cutting/prepareJobs.ts';
import { exitCodes } from '../exitCodes.ts';
import { diskWriter } from '../files/papersFolder.ts';
import { today } from '../store/tell.ts';
import { coloursFor, describeFindings } from '../terminal/findings.ts';
import { endWith, jsonText, print, printError } from '../terminal/output.ts';
import { reportFindings } from '../terminal/report.ts';
import { describeQuote } from './describeQuote.ts';
import { missingRates } from './missingRates.ts';
import { orderedOf, planFromFile, searchPlans } from './plansOfOrders.ts';

/** An order with its estimate and the folder that the papers go to. */
interface QuotedJob {
  readonly prepared: PreparedJob;
  readonly quoted: Quoted;
  readonly folder: string;
}

/** Runs `plywright quote`: nests or reads a plan, prices it, and only then writes; sets the exit code. */
export async function quote(orders: readonly string[], options: QuoteOptions): Promise<void> {
  const { out, library, set } = options;
  const asked = { ...(library === undefined ? {} : { library }), ...(set === undefined ? {} : { set }) };
  const prepared = await prepareJobs(orders, { out, ...asked });
  if (!prepared.ok) return reportFindings(prepared.findings, options);
  const jobs = prepared.value;
  const existing = options.replace ? 'replace edited' : 'keep edited';
  const folders = jobs.map(({ folder }) => join(folder, 'quotation'));
  const missing = missingRates(jobs);
  const inTheWay = (await Promise.all(folders.map((folder) => diskWriter.look(folder, existing)))).flat();
  if (missing.length + inTheWay.length > 0) return reportFindings([...missing, ...inTheWay], options);
  const plans = await plansOf(jobs, options);
  if (!plans.ok) return;
  const { sheets, vat } = options;
  const wishes: QuoteWishes = {
    ...(sheets === undefined ? {} : { sheets }),
    ...(vat === undefined ? {} : { vat }),
  };
  const quotedJobs = jobs.map((job, index) => ({
    prepared: job,
    quoted: quoteOrder(orderedOf(job), plans.value[index]!, wishes),
    folder: folders[index]!,
  }));
  const failed = await writePapers(quotedJobs, options);
  if (failed.length > 0) return reportFindings(failed, options);
  await tell(quotedJobs, prepared.findings, options);
  endWith(exitCodes.done);
}

/** Plans in the order of the jobs; what goes wrong is told here. */
async function plansOf(
  jobs: readonly PreparedJob[],
  options: QuoteOptions,
): Promise<Checked<readonly PlanFile[]>> {
  const failed = async (findings: readonly Finding[], faulty: boolean) => {
    if (faulty) await reportFindings(findings, options, exitCodes.failedReplay);
    else await reportFindings(findings, options);
    return { ok: false, findings } as const;
  };
  if (options.plan !== undefined) {
    const plan = await planFromFile(jobs[0]!, options.plan);
    return plan.ok ? { ...plan, value: [plan.value] } : failed(plan.findings, false);
  }
  let stopSearch: () => void = () => undefined;
  const interrupts = listenForInterrupts(() => stopSearch());
  try {
    const searched = await searchPlans(jobs, options, (stop) => {
      stopSearch = stop;
    });
    if (!searched.ok) return failed(searched.findings, searched.faulty);
    return { ok: true, value: searched.plans, findings: [] };
  } finally {
    interrupts.end();
  }
}

async function writePapers(jobs: readonly QuotedJob[], options: QuoteOptions): Promise<readonly Finding[]> {
  const [{ loadDrawingTools }, { pdfFromDrawings }] = await Promise.all([
    import('../cutting/drawingTools.ts'),
    import('../papers/pdfFromDrawings.ts'),
  ]);
  const { measure } = await loadDrawingTools();
  const { language } = options;
  const date = options.date ?? today();
  const folders = await Promise.all(
    jobs.map(async ({ quoted, folder }) => {
      const { title, pages } = quotationPages(quoted, measure, { date, language });
      const papers = new Map<string, string | Uint8Array>([
        ['quotation.csv', quotationCsv(quoted)],
        ['quotation.pdf', await pdfFromDrawings(pages, { title, language })],
      ]);
      return { folder, papers };
    }),
  );
  return diskWriter.allPapers(folders, options.replace ? 'replace edited' : 'keep edited');
}

function asData({ prepared, quoted, folder }: QuotedJob) {
  const { lines, sums, charges, notCharged, workMs } = quoted.quotation;
  return {
    name: prepared.job.name,
    title: prepared.job.title,
    currency: prepared.job.currency,
    folder,
    papers: ['quotation.csv', 'quotation.pdf'],
    charges,
    notCharged,
    workHours: Math.round(workMs / 3600) / 1000,
    sums,
    lines: lines.map((line) => ({
      number: line.number,
      section: line.section,
      item: line.item,
      amountMinor: line.amountMinor,
      ...(line.kind === 'added'
        ? { percent: line.percent / 100, baseMinor: line.baseMinor, baseLines: line.of }
        : {
            quantity: line.quantityMilli / 1000,
            unit: line.unit,
            ...(line.kind === 'work'
              ? { seconds: line.timeMs / 1000, hourMinor: line.hourMinor }
              : { priceMinor: line.priceMinor }),
            quantityFrom: sourceText(line.source),
          }),
      priceFrom: sourceText(line.priceSource),
    })),
  };
}

async function tell(
  jobs: readonly QuotedJob[],
  findings: readonly Finding[],
  options: QuoteOptions,
): Promise<void> {
  if (options.json) {
    const document = { ok: true, exitCode: exitCodes.done, quotations: jobs.map(asData), findings };
    return print(jsonText(document));
  }
  const colours = coloursFor(process.stdout);
  const parts = jobs.map(
    ({ quoted, folder }) => `${describeQuote(quoted, colours)}\n${folder}/: quotation.csv, quotation.pdf\n`,
  );
  await print(parts.join('\n'));
  if (findings.length > 0) await printError(`${describeFindings(findings, coloursFor(process.stderr))}`);
}
