import { nearestWord } from '../basics/nearestWord.ts';
import type { ExpandedPanel } from '../model/expanded.ts';
import type { Finding } from '../model/finding.ts';
import type { Board, Edging, Finish, Library } from '../model/library.ts';
import type { Order } from '../model/order.ts';

/** What a panel is made of. */
export interface Materials {
  readonly board: Board;
  readonly finish: Finish;
  readonly edging: Edging | null;
}

/** Board, finish and edging that the order gives the panel's role, or null with a finding. */
export function materialsOf(
  panel: ExpandedPanel,
  unit: string,
  order: Order,
  library: Library,
  findings: Finding[],
): Materials | null {
  const choice = order.roles.get(panel.role);
  const board = choice && library.boards.get(choice.board);
  const finish = choice && library.finishes.get(choice.finish);
  if (choice === undefined || board === undefined || finish === undefined) {
    const nearest = nearestWord(panel.role, order.roles.keys());
    findings.push({
      code: 'role-without-board',
      severity: 'error',
      message: `the order gives no board and finish for the role “${panel.role}” of the ${panel.name} of ${unit}`,
      place: panel.place,
      found: panel.role,
      expected: `one of ${[...order.roles.keys()].join(', ')}`,
      ...(nearest === undefined ? {} : { nearest }),
      advice: `add the role ${panel.role} to the order`,
    });
    return null;
  }
  const edging = choice.edging === null ? null : (library.edgings.get(choice.edging) ?? null);
  return { board, finish, edging };
}
