/** A file that a person wrote, with the path to show. */
export interface FileText {
  readonly text: string;
  readonly file: string;
}

/** What an order is made of beside its own file. */
export interface WhatIf {
  /** The files that a variant stands on, the nearest first, the order last; none for an order. */
  readonly below: readonly FileText[];
  /** What is to be otherwise, as given on the command line: `bed_width=1300`. */
  readonly set: readonly string[];
}
