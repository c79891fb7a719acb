import { printMm } from '../../src/basics/lengths.ts';
import type { Panel } from '../../src/model/furniture.ts';
import { writeCsv } from '../../src/pipeline/writeCsv.ts';

const COLUMNS = [
  'number',
  'id',
  'unit',
  'name',
  'role',
  'board',
  'finish',
  'thickness',
  'length',
  'width',
  'count',
  'grain',
  'finished length',
  'finished width',
  'edging length 1',
  'edging length 2',
  'edging width 1',
  'edging width 2',
  'mass kg',
] as const;

/** The panels as comma-separated values; lengths in mm, `length` and `width` are cut sizes, length along the grain. */
export function panelsCsv(panels: readonly Panel[]): string {
  return writeCsv(
    COLUMNS,
    panels.map((p) => [
      p.number,
      p.id,
      p.unit,
      p.name,
      p.role,
      p.board,
      p.finish,
      String(p.thicknessUm / 1000),
      printMm(p.cutLengthUm),
      printMm(p.cutWidthUm),
      p.count,
      p.grain,
      printMm(p.finishedLengthUm),
      printMm(p.finishedWidthUm),
      p.edging.alongLength[0] ?? '',
      p.edging.alongLength[1] ?? '',
      p.edging.alongWidth[0] ?? '',
      p.edging.alongWidth[1] ?? '',
      p.massKg.toFixed(3),
    ]),
  );
}
