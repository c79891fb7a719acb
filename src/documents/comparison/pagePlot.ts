/** A plot as it stands on a page: SVG without style and script, and what its tones mean. */
export interface PagePlot {
  readonly title: string;
  readonly svg: string;
  /** Tones from dark to light with their meaning; none where a plot has only one. */
  readonly tones: readonly string[];
  readonly note: string | null;
  /** Whether it must not be made narrower: a map whose fields hold figures. */
  readonly wide?: true;
}

/** Greys of the parts of a bar, told apart in black and white. */
export const PLOT_TONES: readonly string[] = ['#4d4d4d', '#a6a6a6', '#dedede'];
