import type { Um } from '../model/geometry.ts';
import type { PlanStep } from '../model/plan.ts';
import { type Arranged, sizeAlong } from './arrange.ts';

type Stack = Arranged & { kind: 'stack' };

/** How often the fence is set for these cuts: equal settings that follow each other count once, trims not at all. */
export function fenceSettingsOf(steps: readonly PlanStep[]): number {
  let settings = 0;
  let last: number | null = null;
  for (const step of steps) {
    if (step.cut === 'trim') continue;
    if (step.fence !== last) settings += 1;
    last = step.fence;
  }
  return settings;
}

/** What a way to part a sheet asks of the people who hold it. */
interface Effort {
  /** Cuts of the first stage through pieces larger than half of the raw sheet. */
  readonly heavyCuts: number;
  /** Size, along the stack, of the larger piece after the first cut. */
  readonly largestUm: Um;
}

/** Cuts from the children `from` to `to` of a piece, one after the other, with the sizes of the pieces in hand. */
function piecesInHand(sizes: readonly Um[], lengthUm: Um, kerfUm: Um): Um[] {
  const inHand: Um[] = [];
  let leftUm = lengthUm;
  for (const size of sizes) {
    if (size === leftUm || leftUm <= 0) break;
    inHand.push(leftUm);
    leftUm -= size + kerfUm;
  }
  return inHand;
}

function effortOf(
  inHand: readonly Um[],
  firstFenceUm: Um,
  lengthUm: Um,
  kerfUm: Um,
  heavyUm: number,
): Effort {
  return {
    heavyCuts: inHand.filter((sizeUm) => sizeUm > heavyUm).length,
    largestUm: Math.max(firstFenceUm, lengthUm - firstFenceUm - kerfUm),
  };
}

function isLighter(a: Effort, b: Effort): boolean {
  return a.heavyCuts < b.heavyCuts || (a.heavyCuts === b.heavyCuts && a.largestUm < b.largestUm);
}

/**
 * Where a trimmed sheet may be parted into two before its strips are cut off one by one, so that fewer cuts go through
 * pieces larger than half of the raw sheet, or the largest piece after the first cut is smaller: indices of the child
 * that begins the second piece, the best first. Empty where cutting off the largest strip first is as good.
 *
 *     ┌────┬───┬──┬──┐        ┌────┬───╥──┬──┐
 *     │ A  │ B │C │D │   →    │ A  │ B ║C │D │   first at the double line
 *     └────┴───┴──┴──┘        └────┴───╨──┴──┘
 */
export function earlyPartings(root: Stack, kerfUm: Um, sheetAreaUm2: number): number[] {
  const lengthUm = sizeAlong(root, root.axis);
  const heavyUm = sheetAreaUm2 / 2 / sizeAlong(root, root.axis === 'x' ? 'y' : 'x');
  const sizes = root.children.map((child) => sizeAlong(child, root.axis));
  if (sizes.length < 3) return [];
  const plain = effortOf(piecesInHand(sizes, lengthUm, kerfUm), sizes[0]!, lengthUm, kerfUm, heavyUm);
  const ways: { readonly at: number; readonly effort: Effort }[] = [];
  let fenceUm = sizes[0]!;
  for (let at = 2; at < sizes.length; at++) {
    fenceUm += kerfUm + sizes[at - 1]!;
    const restUm = lengthUm - fenceUm - kerfUm;
    if (restUm <= 0) break;
    const inHand = [
      lengthUm,
      ...piecesInHand(sizes.slice(0, at), fenceUm, kerfUm),
      ...piecesInHand(sizes.slice(at), restUm, kerfUm),
    ];
    const effort = effortOf(inHand, fenceUm, lengthUm, kerfUm, heavyUm);
    if (isLighter(effort, plain)) ways.push({ at, effort });
  }
  ways.sort((a, b) => (isLighter(a.effort, b.effort) ? -1 : isLighter(b.effort, a.effort) ? 1 : a.at - b.at));
  return ways.map(({ at }) => at);
}
