import { type EdgeHole, type Hole, type PanelAspect, panelAspects } from '../model/furniture.ts';
import type { Part } from '../model/part.ts';

export { type PanelAspect, panelAspects } from '../model/furniture.ts';

/** A panel as far as two orders can be held against each other; where holes are not known they are not compared. */
export interface MatchablePanel extends Part {
  readonly holes?: readonly Hole[];
  readonly edgeHoles?: readonly EdgeHole[];
}

/** Panels of an old and a new order that are one and the same thing, or for which the other order has none. */
export interface PanelMatch<Old extends MatchablePanel, New extends MatchablePanel = Old> {
  readonly kind: 'same' | 'changed' | 'new' | 'no longer needed';
  /** Null for a new panel. */
  readonly before: Old | null;
  /** Null for one that is no longer needed. */
  readonly after: New | null;
  /** How many pieces, at least 1. */
  readonly count: number;
  /** In what they differ, in the order of `panelAspects`; empty unless `changed`. */
  readonly differs: readonly PanelAspect[];
}

function aspect(panel: MatchablePanel, of: PanelAspect): unknown {
  switch (of) {
    case 'board':
    case 'finish':
    case 'grain':
      return panel[of];
    case 'thickness':
      return panel.thicknessUm;
    case 'size':
      return [panel.finishedLengthUm, panel.finishedWidthUm];
    case 'cut size':
      return [panel.cutLengthUm, panel.cutWidthUm];
    case 'edging':
      return [panel.edging.alongLength, panel.edging.alongWidth];
    case 'row':
      return panel.match && [panel.match.position, panel.match.follows];
    case 'outline':
      return panel.byHand?.outline?.map((at) => [at.alongLengthUm, at.alongWidthUm]);
    case 'openings':
      return panel.byHand?.openings.map(({ alongLength, alongWidth, kept }) => [
        alongLength,
        alongWidth,
        kept && [kept.lengthUm, kept.widthUm],
      ]);
    case 'holes':
      return [
        panel.holes?.map(({ alongLengthUm, alongWidthUm, diameterUm, depthUm, face }) => [
          alongLengthUm,
          alongWidthUm,
          diameterUm,
          depthUm,
          face,
        ]),
        (panel.edgeHoles ?? []).map(({ face, alongUm, acrossUm, diameterUm, depthUm }) => [
          face,
          alongUm,
          acrossUm,
          diameterUm,
          depthUm,
        ]),
      ];
  }
}

/** Nothing to cut by hand and an empty list of it are one. */
function comparable(value: unknown): string {
  return JSON.stringify(value === undefined ? [] : value);
}

/** In what two panels differ; holes only where both are known, names of openings and holes not at all. */
export function panelDifferences(before: MatchablePanel, after: MatchablePanel): PanelAspect[] {
  return panelAspects.filter((one) => {
    if (one === 'holes' && (before.holes === undefined || after.holes === undefined)) return false;
    return comparable(aspect(before, one)) !== comparable(aspect(after, one));
  });
}

const sawnAspects: ReadonlySet<PanelAspect> = new Set(['board', 'finish', 'thickness', 'cut size', 'grain']);

/**
 * Whether a piece that was sawn as one panel can become another, as it comes off the saw: board, finish, thickness, cut
 * size and the way of the grain are alike. Edging, holes, and what is cut by hand may differ, which matters only once
 * that has been done. A panel on which no grain runs may lie the other way round.
 */
export function fitsAsSawn(before: MatchablePanel, after: MatchablePanel): boolean {
  const differs = panelDifferences(before, after).filter((one) => sawnAspects.has(one));
  // A piece cut with its grain serves where no grain is asked for as well, and either way round.
  const rest = differs.filter((one) => one !== 'grain' && one !== 'cut size');
  if (rest.length > 0 || (after.grain === 'length' && before.grain !== 'length')) return false;
  const straight = before.cutLengthUm === after.cutLengthUm && before.cutWidthUm === after.cutWidthUm;
  const turned = before.cutLengthUm === after.cutWidthUm && before.cutWidthUm === after.cutLengthUm;
  return straight || (after.grain === 'none' && turned);
}

interface Left<P> {
  readonly panel: P;
  count: number;
}

/** Panels by what they are called; with their order where one of the two sides has several orders. */
function byIdentity<P extends MatchablePanel>(
  panels: readonly P[],
  withOrder: boolean,
): Map<string, Left<P>[]> {
  const found = new Map<string, Left<P>[]>();
  for (const panel of panels) {
    const key = JSON.stringify([withOrder ? panel.order : '', panel.unit, panel.name]);
    const alike = found.get(key) ?? [];
    alike.push({ panel, count: panel.count });
    found.set(key, alike);
  }
  return found;
}

function severalOrders(panels: readonly MatchablePanel[]): boolean {
  return new Set(panels.map(({ order }) => order)).size > 1;
}

/** Pairs off what `fits`, each piece once, in the order of the new panels. */
function pairOff<Old extends MatchablePanel, New extends MatchablePanel>(
  before: readonly Left<Old>[],
  after: readonly Left<New>[],
  fits: (differs: readonly PanelAspect[]) => boolean,
): PanelMatch<Old, New>[] {
  const matches: PanelMatch<Old, New>[] = [];
  for (const wanted of after) {
    for (const there of before) {
      const count = Math.min(wanted.count, there.count);
      if (count === 0) continue;
      const differs = panelDifferences(there.panel, wanted.panel);
      if (!fits(differs)) continue;
      there.count -= count;
      wanted.count -= count;
      const kind = differs.length === 0 ? 'same' : 'changed';
      matches.push({ kind, before: there.panel, after: wanted.panel, count, differs });
    }
  }
  return matches;
}

/**
 * Which panels of an old order are the same as which of a new one: a panel is known by its unit and its name (and by its
 * order, where one side holds several), and every piece of it counts. Of pieces with one identity those that are alike in
 * everything are paired first, then the others as they come, as `changed` with what differs. A piece too many is `no longer
 * needed`, one too few `new`. Matches with a new panel come in the order of the new panels, those that are no longer
 * needed after them in the order of the old. Every piece of both sides is in exactly one match.
 */
export function matchPanels<Old extends MatchablePanel, New extends MatchablePanel>(
  before: readonly Old[],
  after: readonly New[],
): PanelMatch<Old, New>[] {
  const withOrder = severalOrders(before) || severalOrders(after);
  const old = byIdentity(before, withOrder);
  const wanted = byIdentity(after, withOrder);
  const matches: PanelMatch<Old, New>[] = [];
  for (const [key, panels] of wanted) {
    const there = old.get(key) ?? [];
    matches.push(...pairOff(there, panels, (differs) => differs.length === 0));
    matches.push(...pairOff(there, panels, () => true));
    for (const { panel, count } of panels) {
      if (count > 0) matches.push({ kind: 'new', before: null, after: panel, count, differs: [] });
    }
  }
  for (const { panel, count } of [...old.values()].flat()) {
    if (count > 0) matches.push({ kind: 'no longer needed', before: panel, after: null, count, differs: [] });
  }
  const place = new Map<MatchablePanel, number>(after.map((panel, index) => [panel, index]));
  const oldPlace = new Map<MatchablePanel, number>(before.map((panel, index) => [panel, index]));
  const rank = ({ before: b, after: a }: PanelMatch<Old, New>) =>
    a === null ? after.length + (oldPlace.get(b!) ?? 0) : place.get(a)!;
  return matches.sort((a, b) => rank(a) - rank(b));
}
