/** What can be left to do at a panel once it is sawn, in the order of the work. */
export type WorkStep = 'shape' | 'edge' | 'groove' | 'drill' | 'cutOut' | 'assemble';
export type EdgeSide = 'length1' | 'length2' | 'width1' | 'width2';

/** Words of the labels that are stuck on panels and offcuts. Sizes and numbers come in as printed. */
export interface StickerWords {
  readonly title: (job: string) => string;
  readonly page: (job: string, page: number, pages: number) => string;
  readonly finished: (size: string) => string;
  readonly cut: (size: string) => string;
  readonly piece: (piece: number, of: number) => string;
  /** Short names of edges, as beside the drawing. */
  readonly edges: Readonly<Record<EdgeSide, string>>;
  readonly noEdging: string;
  readonly next: (steps: readonly WorkStep[]) => string;
  readonly offcut: string;
  readonly grain: (size: string) => string;
  readonly noGrain: string;
  readonly from: (job: string, plan: number) => string;
  readonly fromPanel: (job: string, number: number) => string;
  readonly sheet: (copy: number, of: number) => string;
  readonly date: string;
}
