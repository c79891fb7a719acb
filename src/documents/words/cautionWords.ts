import type { CautionText, KnownCaution } from '../../model/cautions.ts';
import type { CutGuide } from '../../model/stock.ts';

/** Words of the cautions, in the job book and on their own sheet. */
export interface CautionWords {
  readonly heading: string;
  /** Before all: what comes before these pages. */
  readonly intro: string;
  /** Which units bring a caution. */
  readonly broughtBy: (units: readonly string[]) => string;
  readonly texts: Readonly<Record<KnownCaution, CautionText>>;
  /** What the caution `saw` says beyond its points, by what guides the cuts. */
  readonly guided: Readonly<Record<CutGuide, readonly string[]>>;
}
