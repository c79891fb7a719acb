import type { PlotTools } from '../../src/pipeline/comparisonPage.ts';

/** A window without a screen to make plots in. Takes some 400 ms to load, so only what plots does so. */
export async function loadPlotWindow(): Promise<PlotTools['window']> {
  const { JSDOM } = await import('jsdom');
  return new JSDOM('').window as never;
}
