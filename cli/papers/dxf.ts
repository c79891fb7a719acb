import type { Papers } from '../../src/edge/index.ts';
import { makeDxf } from '../../src/pipeline/makeDxf.ts';
import { safeFileName } from '../files/fileName.ts';
import type { PaperRequest } from './morePapers.ts';

/** Files for machines: `dxf/panels/<number>-<unit>-<panel>.dxf` and `dxf/sheets/<stock group>-<number>.dxf`. */
export async function dxfPapers({ job, proven }: PaperRequest): Promise<Papers> {
  return new Map(
    makeDxf(job, proven).map(({ of, number, words, text }) => {
      const path =
        of === 'panel'
          ? `dxf/panels/${number}-${safeFileName(words)}.dxf`
          : `dxf/sheets/${safeFileName(words)}-${number}.dxf`;
      return [path, text] as const;
    }),
  );
}
