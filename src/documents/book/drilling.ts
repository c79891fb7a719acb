import { type BenchPanel, panelOnBench } from '../../basics/panelOnBench.ts';
import { type DrawnPanel, drawPanels } from '../../drawing/index.ts';
import type { PlacedUnit } from '../../model/furniture.ts';
import type { Library } from '../../model/library.ts';
import type { Section } from './book.ts';
import { type NumberedName, runsOfNames } from './runsOfNames.ts';
import type { BookFacts } from './subject.ts';

/** Whether there is work to be done on it after sawing and edging, beside putting it together. */
function worked({ holes, edgeHoles, cutOuts, grooves, shaped }: BenchPanel): boolean {
  return shaped || holes.length + edgeHoles.length + cutOuts.length + grooves.length > 0;
}

/** What must be alike for two panels to share a drawing: all but their names. */
function looks(bench: BenchPanel, panel: PlacedUnit['panels'][number]): string {
  return JSON.stringify([bench, panel.board, panel.finish, panel.grain]);
}

/** The panels that are drawn, unit by unit, those just alike together. */
function drawnOf(
  units: readonly PlacedUnit[],
  library: Library,
  { numberOf, isAbout }: BookFacts,
): DrawnPanel[] {
  const alike = new Map<string, Omit<DrawnPanel, 'names'> & { named: NumberedName[] }>();
  const all = units.flatMap((unit) => unit.panels.filter(isAbout).map((panel) => ({ unit, panel })));
  for (const { unit, panel } of all) {
    const bench = panelOnBench(panel, unit.panels, library.edgings);
    if (!worked(bench)) continue;
    const key = looks(bench, panel);
    const before = alike.get(key);
    alike.set(key, {
      bench,
      named: [...(before?.named ?? []), { number: numberOf(panel.id), name: panel.name, unit: panel.unit }],
      thicknessUm: panel.thicknessUm,
      grain: panel.grain,
      count: panel.count + (before?.count ?? 0),
    });
  }
  return [...alike.values()].map(({ named, ...drawn }) => ({ ...drawn, names: runsOfNames(named) }));
}

/** Panels with holes, openings, grooves or a shape of their own, drawn with distances; nothing where there are none. */
export function drillingChapter(facts: BookFacts): Section[] {
  const { ordered, words, measure, plan, units, title } = facts;
  if (ordered === undefined) return [];
  const { library, furniture } = ordered;
  const panels = drawnOf(furniture.units, library, facts);
  if (panels.length === 0) return [];
  const titles = new Map([...library.edgings.keys()].map((id) => [id, title(id)] as const));
  const drawings = drawPanels(panels, {
    measure,
    words: words.drawings,
    units,
    job: plan.job,
    titles,
    pageNumber: 'left out',
  });
  const { heading } = words.drawings.panel;
  return [
    {
      id: 'drilling',
      heading,
      level: 2,
      startsPage: true,
      blocks: [{ kind: 'drawings', label: heading, drawings, pieces: [] }],
    },
  ];
}
