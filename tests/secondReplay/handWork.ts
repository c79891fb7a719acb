import { Fraction } from './fraction.ts';
import { refuse } from './pieces.ts';
import type { Written } from './planAsWritten.ts';

/** What is cut by hand lies on the panel. */
export function checkHandWork(panel: Written): void {
  if (!panel.has('byHand')) return;
  const byHand = panel.part('byHand');
  const size = [panel.number('length'), panel.number('width')] as const;
  const corners = byHand.list('outline').map((corner) => {
    const [length, width] = corner as [Fraction, Fraction];
    if (length.isMoreThan(size[0]) || width.isMoreThan(size[1]))
      refuse(`a corner lies beside ${panel.text('id')}`);
    return [length, width] as const;
  });
  if (corners.length > 0 && !twiceTheArea(corners).isPositive())
    refuse(`an outline of ${panel.text('id')} is not counter-clockwise`);
  for (const opening of byHand.parts('openings')) {
    for (const [index, side] of (['length', 'width'] as const).entries()) {
      const [from, to] = opening.numbers(side) as [Fraction, Fraction];
      if (!from.isLessThan(to) || to.isMoreThan(size[index]!))
        refuse(`${opening.text('name')} is not on the panel`);
      if (!opening.has('kept')) continue;
      const kept = opening.part('kept').number(side);
      if (!kept.isPositive() || kept.isMoreThan(to.minus(from)))
        refuse(`more is kept of ${opening.text('name')} than falls out`);
    }
  }
}

/** The area inside an outline, twice; positive when its corners go round counter-clockwise. */
function twiceTheArea(corners: readonly (readonly [Fraction, Fraction])[]): Fraction {
  return corners.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = corners[(index + 1) % corners.length]!;
    return sum.plus(x.times(nextY)).minus(nextX.times(y));
  }, Fraction.zero);
}
