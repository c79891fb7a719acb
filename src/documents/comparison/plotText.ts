/** What is needed of a window to plot in: a browser's own, or one made by jsdom at the edge. */
export interface PlotWindow {
  readonly document: unknown;
  readonly XMLSerializer: new () => { serializeToString(node: never): string };
}

/** Width of plots as they are drawn; narrow, so that their letters can still be read on a phone. */
export const PLOT_WIDTH = 440;

/** A plot's element as text. Its style sheet goes: a page's content policy allows the page's own only. */
export function plotText(element: unknown, window: PlotWindow, label: string): string {
  const svg = element as {
    querySelectorAll: (selector: string) => Iterable<{
      remove: () => void;
      removeAttribute: (name: string) => void;
    }>;
    setAttribute: (name: string, value: string) => void;
  };
  for (const style of svg.querySelectorAll('style')) style.remove();
  // A group must not be named where it has no role; the picture is named as a whole.
  for (const group of svg.querySelectorAll('g')) {
    for (const name of ['aria-label', 'aria-description', 'aria-hidden']) group.removeAttribute(name);
  }
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', label);
  return new window.XMLSerializer().serializeToString(svg as never);
}
