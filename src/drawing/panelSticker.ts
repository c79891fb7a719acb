import type { Weight } from './drawing.ts';

/**
 * What stands on a label that is stuck on a panel or an offcut, before it has a size. All texts are plain and in the
 * reader's language. (In drawings a label is what is written on a panel; hence the name.)
 */
export interface PanelSticker {
  /** What its QR code says; also printed below the code. */
  readonly code: string;
  /** Large, in a frame, at the top left: the panel's number. */
  readonly mark: string;
  readonly heading: string;
  readonly lines: readonly StickerLine[];
  /** Word before a line to write on; null for none. */
  readonly fillIn: string | null;
  readonly picture: StickerPicture;
}

export interface StickerLine {
  readonly text: string;
  readonly weight: Weight;
  /** How many lines it may take before it is shortened. */
  readonly most: number;
  /** `whole`: never on fewer lines than it takes within `most`; `optional`: only where there is room for it. */
  readonly need: 'whole' | 'always' | 'optional';
}

/** The small drawing: the piece with its length level, edge `length1` below and `width1` on the left. */
export interface StickerPicture {
  readonly kind: 'panel' | 'offcut';
  readonly lengthUm: number;
  readonly widthUm: number;
  readonly grain: 'length' | 'width' | 'none';
  readonly edges: readonly StickerEdge[];
  /** Openings through it, from its corner at length 0 and width 0. */
  readonly openings: readonly {
    readonly alongLength: readonly [from: number, to: number];
    readonly alongWidth: readonly [from: number, to: number];
  }[];
  /** Its true shape, closed, where it is no rectangle; from the same corner. */
  readonly outline?: readonly (readonly [alongLengthUm: number, alongWidthUm: number])[];
}

/** An edge that gets edging. */
export interface StickerEdge {
  readonly side: 'length1' | 'length2' | 'width1' | 'width2';
  /** As printed beside it: `L1`. */
  readonly name: string;
  /** Which of the panel's edgings it gets, from 0: edgings are drawn in different strokes. */
  readonly edging: number;
}
