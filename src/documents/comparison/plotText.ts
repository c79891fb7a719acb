import type { DrawingWindow } from '../../drawing/svg.ts';

/** Width of plots as they are drawn; a page makes them as wide as it has room. */
export const PLOT_WIDTH = 760;

/** A plot's element as text. Its style sheet goes: a page's content policy allows the page's own only. */
export function plotText(element: unknown, window: DrawingWindow, label: string): string {
  const svg = element as {
    querySelectorAll: (selector: string) => Iterable<{ remove: () => void }>;
    setAttribute: (name: string, value: string) => void;
  };
  for (const style of svg.querySelectorAll('style')) style.remove();
  svg.setAttribute('role', 'img');
  svg.setAttribute('aria-label', label);
  return new window.XMLSerializer().serializeToString(svg as never);
}
