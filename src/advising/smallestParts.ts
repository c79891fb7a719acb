import type { Part } from '../model/part.ts';

/**
 * Panels of which none is larger than it is in any of several lists, told apart by id; what is not in all of them is left
 * out, and of what there is several times the least number stands. A plan for any of the lists is one for these too, so that
 * what these take is the least that any of them can take. Where sizes only grow or only shrink as a number is changed,
 * the same holds for every list between those given. Panels that change their board or their row stay out.
 */
export function smallestParts(lists: readonly (readonly Part[])[]): Part[] {
  const [first, ...others] = lists;
  const byId = others.map((list) => new Map(list.map((part) => [part.id, part])));
  return (first ?? []).flatMap((part) => {
    const same = byId.map((list) => list.get(part.id));
    const alike = (one: Part | undefined): one is Part =>
      one !== undefined &&
      one.board === part.board &&
      one.finish === part.finish &&
      one.thicknessUm === part.thicknessUm &&
      one.grain === part.grain &&
      one.match?.run === part.match?.run;
    if (!same.every(alike)) return [];
    const all = [part, ...same];
    const least = (of: (each: Part) => number) => Math.min(...all.map(of));
    return [
      {
        ...part,
        cutLengthUm: least((each) => each.cutLengthUm),
        cutWidthUm: least((each) => each.cutWidthUm),
        count: least((each) => each.count),
      },
    ];
  });
}
