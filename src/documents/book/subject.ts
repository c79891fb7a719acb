import { mmToUm } from '../../basics/lengths.ts';
import type { PageSize, TextMeasurer, Units } from '../../drawing/index.ts';
import { printSize } from '../../drawing/lengthsInWords.ts';
import type { Furniture } from '../../model/furniture.ts';
import type { Library } from '../../model/library.ts';
import type { Order } from '../../model/order.ts';
import type { PlanFile, PlanGroup } from '../../model/plan.ts';
import type { NumberedPanel } from '../cuttingList.ts';
import type { GroupSummary } from '../summary.ts';
import type { Words } from '../words/words.ts';

/** What a job book is made of. */
export interface BookSubject {
  readonly plan: PlanFile;
  /** Name of the order or list, as the codes of labels have it. */
  readonly job: string;
  /** One per stock group, in order. */
  readonly summaries: readonly GroupSummary[];
  /** What an order adds to a plan; absent for a plain list. */
  readonly ordered?: { readonly order: Order; readonly library: Library; readonly furniture: Furniture };
  readonly words: Words;
  readonly units: Units;
  /** Paper that the book is printed on. */
  readonly page: PageSize;
  readonly measure: TextMeasurer;
}

/** A subject with what every chapter looks up in it. */
export interface BookFacts extends BookSubject {
  readonly panels: readonly NumberedPanel[];
  /** Number of a panel in the cutting list. Throws for one that the book is not about. */
  readonly numberOf: (panel: string) => number;
  /** Whether the book is about a panel of the order: of a recut only about those that are cut anew. */
  readonly isAbout: (panel: { readonly id: string }) => boolean;
  /** Title of a board, finish or edging of the library; the id where there is none. */
  readonly title: (id: string) => string;
  readonly groupWords: (group: PlanGroup) => string;
}

/** Two sizes of the plan file, in mm, as people read them: `600 × 397.5`. */
export function sizeText(firstMm: number, secondMm: number, units: Units = 'mm'): string {
  return printSize(mmToUm(firstMm), mmToUm(secondMm), units);
}

/** As `sizeText`, for what is set on the saw: in inches with the mm beside them. */
export function sawnSizeText(firstMm: number, secondMm: number, units: Units): string {
  const size = sizeText(firstMm, secondMm, units);
  return units === 'mm' ? size : `${size} (${sizeText(firstMm, secondMm)})`;
}

/** `left side, galley sink`. */
export function panelText(panel: { readonly name: string; readonly unit: string }): string {
  return panel.unit === '' ? panel.name : `${panel.name}, ${panel.unit}`;
}
