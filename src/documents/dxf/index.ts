import { mmToUm } from '../../basics/lengths.ts';
import { type BenchPanel, panelOnBench } from '../../basics/panelOnBench.ts';
import type { Furniture, Panel } from '../../model/furniture.ts';
import type { Extent } from '../../model/geometry.ts';
import type { Library } from '../../model/library.ts';
import type { PlanFile, PlanPanel } from '../../model/plan.ts';
import { panelsToFinish } from '../cuttingList.ts';
import { dxfText } from './dxfText.ts';
import { panelDxf } from './panelDxf.ts';
import { sheetDxf } from './sheetDxf.ts';

/** A file for machines, with what its name is made of. */
export interface DxfFile {
  readonly of: 'panel' | 'sheet';
  /** Of the panel in the cutting list, or of the cut plan in its stock group; as many figures as its files need. */
  readonly number: string;
  /** Unit and name of the panel, or the id of the stock group. */
  readonly words: string;
  readonly text: string;
}

/**
 * A plan as DXF files: one for each panel of the cutting list, in its true shape with its openings, holes and grooves
 * where furniture is known (see `panelDxf`), and one for each cut plan (see `sheetDxf`). The same plan gives the same bytes.
 */
export function dxfFiles(
  plan: PlanFile,
  ordered?: { readonly furniture: Furniture; readonly library: Library },
): DxfFile[] {
  const panels = panelsToFinish(plan);
  const numbers = new Map(panels.map(({ panel, number }) => [panel.id, number]));
  const figures = String(Math.max(0, ...panels.map(({ number }) => number))).length;
  const furnished = new Map<string, { panel: Panel; unit: readonly Panel[] }>();
  for (const unit of ordered?.furniture.units ?? []) {
    for (const panel of unit.panels) furnished.set(panel.id, { panel, unit: unit.panels });
  }
  const panelFiles = panels.map(({ number, group, panel }): DxfFile => {
    const stands = furnished.get(panel.id);
    const bench =
      stands === undefined || ordered === undefined
        ? listedOnBench(panel)
        : panelOnBench(stands.panel, stands.unit, ordered.library.edgings);
    const drawing = panelDxf({
      bench,
      number,
      name: panel.name,
      unit: panel.unit,
      job: plan.job,
      count: panel.count,
      board: group.board,
      finish: group.finish,
      thicknessUm: mmToUm(group.thickness),
      grain: panel.grain,
      standsInUnit: stands !== undefined,
    });
    return {
      of: 'panel',
      number: String(number).padStart(figures, '0'),
      words: [panel.unit, panel.name].filter((word) => word !== '').join(' '),
      text: dxfText(drawing),
    };
  });
  const sheetFiles = plan.groups.flatMap((group) =>
    group.sheets.map(
      (sheet): DxfFile => ({
        of: 'sheet',
        number: String(sheet.number).padStart(String(group.sheets.length).length, '0'),
        words: group.id,
        text: dxfText(sheetDxf(plan.job, group, sheet, (panel) => numbers.get(panel)!)),
      }),
    ),
  );
  return [...panelFiles, ...sheetFiles];
}

/** A panel of a plain list: a rectangle whose sides have no names, sawn as the list says. */
function listedOnBench(panel: PlanPanel): BenchPanel {
  const [lengthUm, widthUm] = [mmToUm(panel.finishedLength), mmToUm(panel.finishedWidth)];
  const sawn = (mm: number): Extent => [0, mmToUm(mm)];
  const corner = (leftUm: number, nearUm: number) => ({ leftUm, nearUm });
  return {
    lengthUm,
    widthUm,
    faceUp: 'top',
    sides: { left: 'left', right: 'right', near: 'front', far: 'back' },
    edging: {
      left: panel.edging.alongWidth[0],
      right: panel.edging.alongWidth[1],
      near: panel.edging.alongLength[0],
      far: panel.edging.alongLength[1],
    },
    outline: [corner(0, 0), corner(lengthUm, 0), corner(lengthUm, widthUm), corner(0, widthUm)],
    shaped: false,
    cutOuts: [],
    holes: [],
    edgeHoles: [],
    grooves: [],
    sawn: { left: sawn(panel.length), near: sawn(panel.width) },
    sawnOutline: null,
    scribing: { left: 0, right: 0, near: 0, far: 0 },
    marksFromSawn: { left: null, near: null },
  };
}
