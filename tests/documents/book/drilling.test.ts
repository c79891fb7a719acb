import { describe, expect, it } from 'vitest';
import { numberPanels } from '../../../src/documents/cuttingList.ts';
import { bookOf, demoJob } from './demoBook.ts';

const made = demoJob();
const book = bookOf(made);

/** The page's chapter as text. */
function chapter(html: string): string {
  const start = html.indexOf('id="drilling"');
  if (start < 0) throw new Error('the book has no chapter about drilling');
  const end = html.indexOf('id="units"', start);
  return html.slice(start, end < 0 ? undefined : end);
}

describe('the chapter about drilling', () => {
  const text = chapter(book.html);
  const numbers = new Map(numberPanels(made.proven.plan).map(({ panel, number }) => [panel.id, number]));
  const panels = made.job.ordered!.furniture.units.flatMap((unit) => unit.panels);
  const runs = [...text.matchAll(/(\d+)–(\d+) [^;<]*?(\d+)–(\d+), /g)].map((found) =>
    found.slice(1).map(Number),
  );
  const told = (panel: (typeof panels)[number]) => {
    const number = numbers.get(panel.id)!;
    const inRun = runs.some(([from, to]) => from! <= number && number <= to!);
    return inRun || text.includes(`${number} ${panel.name}, ${panel.unit}`);
  };

  it('draws every panel with holes, openings or a curved edge, by its number in the cutting list', () => {
    const worked = panels.filter(
      ({ holes, edgeHoles = [], cutOuts, outline }) =>
        holes.length + edgeHoles.length + cutOuts.length > 0 || outline !== undefined,
    );
    expect(worked.length).toBeGreaterThan(40);
    expect(worked.filter((panel) => !told(panel)).map(({ id }) => id)).toEqual([]);
  });

  it('leaves out panels that only the saw and the edging machine work on', () => {
    const into = new Set(panels.flatMap((panel) => panel.housings.map((housing) => housing.into)));
    const plain = panels.filter(
      ({ id, holes, edgeHoles = [], cutOuts, outline }) =>
        holes.length + edgeHoles.length + cutOuts.length === 0 && outline === undefined && !into.has(id),
    );
    expect(plain.length).toBeGreaterThan(10);
    expect(plain.filter(told).map(({ id }) => id)).toEqual([]);
  });

  it('draws panels that are just alike once', () => {
    for (const side of ['left', 'right']) {
      const heading = [1, 2].map((drawer) => {
        const panel = panels.find(({ name }) => name === `drawer ${drawer} ${side}`)!;
        return `${numbers.get(panel.id)} ${panel.name}, ${panel.unit}`;
      });
      expect(text.includes(heading.join('; ')), heading.join('; ')).toBe(true);
    }
  });
});
