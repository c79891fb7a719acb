import type { PanelAspect } from '../../model/furniture.ts';

/** The words of later plans of a job: spoiled panels that are cut anew, and what was sawn before a change. */
export interface LaterWords {
  readonly recutTitle: (job: string, number: number) => string;
  readonly partTitle: (job: string, part: number) => string;
  readonly spoiled: {
    readonly heading: string;
    readonly intro: string;
    readonly why: (why: string) => string;
    readonly columns: readonly string[];
    readonly piece: (piece: number, of: number) => string;
  };
  readonly sawn: {
    readonly heading: string;
    readonly intro: (sheets: readonly string[]) => string;
    readonly rest: string;
    readonly none: string;
    readonly columns: readonly string[];
    readonly left: string;
    readonly leftIntro: string;
    readonly leftColumns: readonly string[];
    readonly kept: string;
    readonly waste: string;
    /** What of a panel is otherwise since it was sawn. */
    readonly differs: Readonly<Record<PanelAspect, string>>;
  };
}
