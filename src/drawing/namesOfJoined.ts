import type { PlanSheet } from '../model/plan.ts';
import { plainText } from './lettering.ts';

/** Pieces of a sheet that hold several others: one of each kind of name, to be explained beside the cuts. */
export interface JoinedNames {
  /** `B`, where some piece is called `B+`: B and all after it. */
  readonly restFrom: string | null;
  /** `A` and `C`, where some piece is called `A-C`: A to C. */
  readonly span: readonly [first: string, last: string] | null;
}

const SPAN = /^([A-Z]+)-([A-Z]+)$/;

/** The first names of pieces in hand that say by a plus or a stroke what is still joined. */
export function namesOfJoined({ steps }: PlanSheet): JoinedNames {
  const rest = steps.find(({ piece }) => piece.endsWith('+'))?.piece;
  const span = steps.map(({ piece }) => SPAN.exec(piece)).find((found) => found !== null);
  return {
    restFrom: rest === undefined ? null : plainText(rest.slice(0, -1)),
    span: span ? [span[1]!, span[2]!] : null,
  };
}
