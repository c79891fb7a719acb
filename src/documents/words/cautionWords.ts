import type { CautionText, KnownCaution } from '../../model/cautions.ts';

/** Words of the cautions, in the job book and on their own sheet. */
export interface CautionWords {
  readonly heading: string;
  /** Before all: what comes before these pages. */
  readonly intro: string;
  /** Which units bring a caution. */
  readonly broughtBy: (units: readonly string[]) => string;
  readonly texts: Readonly<Record<KnownCaution, CautionText>>;
}
