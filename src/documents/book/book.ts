import type { Drawing } from '../../drawing/index.ts';
import type { StepInWords } from '../stepsInWords.ts';
import type { Words } from '../words/words.ts';

/** One thing to tick off. */
export interface Tick {
  /** Stable within the plan. */
  readonly key: string;
  readonly text: string;
  /** Number of the panel it is one piece of, if it is one. */
  readonly panel?: number;
  /** The piece of the plan it is cut as, by which the drawing of its sheet knows it. */
  readonly piece?: string;
}

export interface Column {
  readonly heading: string;
  /** Share of the width that is left by the others. */
  readonly weight: number;
  readonly anchor?: 'end';
}

export interface Row {
  readonly cells: readonly string[];
  /** Number of the panel the row is about: the page counts its pieces in the last cell. */
  readonly countsPanel?: number;
  /** Last cell is a box to tick. */
  readonly tick?: string;
}

/** Texts of a chapter, before paper and screen; all are plain. */
export type TextBlock =
  | { readonly kind: 'paragraph'; readonly text: string; readonly strong?: true }
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'ticks'; readonly items: readonly Tick[] }
  | { readonly kind: 'steps'; readonly steps: readonly StepInWords[] }
  | {
      readonly kind: 'table';
      readonly caption: string;
      readonly columns: readonly Column[];
      readonly rows: readonly Row[];
      /** The last row is a sum. */
      readonly sum?: true;
    };

/** Full pages of their own on paper; on a screen pictures that can be made larger. */
export interface DrawingsBlock {
  readonly kind: 'drawings';
  readonly label: string;
  /** As a screen shows them. */
  readonly drawings: readonly Drawing[];
  /** Boxes of pieces on the first of them. */
  readonly pieces: readonly DrawnPiece[];
  /** As they are printed, where that is not the same: ever less of the room taken by them, null when there is no other way. */
  readonly onPaper?: (smaller: number) => readonly Drawing[] | null;
  /** What belongs beside them, in groups that are kept whole: in the free room of the last, or of one before it, where they fit. */
  readonly beside?: readonly (readonly TextBlock[])[];
}

/** What a chapter is made of. */
export type Block = TextBlock | DrawingsBlock;

/** Where a piece lies on its drawing, in page mm, and the ticks it stands for. */
export interface DrawnPiece {
  readonly panel: number;
  readonly ticks: readonly string[];
  readonly box: { readonly x0: number; readonly y0: number; readonly x1: number; readonly y1: number };
}

export interface Section {
  /** Safe as an anchor. */
  readonly id: string;
  readonly heading: string;
  readonly level: 2 | 3;
  /** On paper. */
  readonly startsPage: boolean;
  /** None where the heading only stands over the ones of level 3 that follow; paper leaves it out. */
  readonly blocks: readonly Block[];
}

/** The job book before it is paper or page. */
export interface Book {
  readonly title: string;
  readonly words: Words;
  readonly sections: readonly Section[];
}
