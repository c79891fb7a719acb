import type { Checked } from '../../src/model/finding.ts';
import type { OrderedFurniture } from '../../src/pipeline/job.ts';

/** What the order says that `--order-file` names; undefined where none is named. Loads the line only where one is. */
export async function orderedByFile({
  orderFile,
  library,
}: {
  readonly orderFile?: string;
  readonly library?: string;
}): Promise<Checked<OrderedFurniture | undefined>> {
  if (orderFile === undefined) return { ok: true, value: undefined, findings: [] };
  const { readOrderFile } = await import('./prepareJobs.ts');
  const { furnishOrder } = await import('../../src/pipeline/prepareOrder.ts');
  const read = await readOrderFile(orderFile, library === undefined ? {} : { library }, new Map());
  if (!read.ok) return read;
  return furnishOrder(read.value.text, orderFile, read.value.library, read.value.whatIf);
}
