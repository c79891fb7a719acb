import type { PlanFile } from '../../src/model/plan.ts';

/** How often a plan saws each size of sheet, as options of `plywright stock receive sheet`. */
export function sheetsOfPlan(plan: PlanFile): string[][] {
  return plan.groups.flatMap(({ board, finish, thickness, stock, sheets }) =>
    stock.flatMap(({ id, kind, length, width, grain }) => {
      const count = sheets.reduce((sum, sheet) => (sheet.stock === id ? sum + sheet.copies : sum), 0);
      if (kind === 'offcut' || count === 0) return [];
      const material =
        board === '' ? [] : ['--board', board, '--finish', finish, '--thickness', `${thickness}`];
      const size = ['--length', `${length}`, '--width', `${width}`, '--grain', grain];
      return [[...material, ...size, '--count', `${count}`]];
    }),
  );
}
