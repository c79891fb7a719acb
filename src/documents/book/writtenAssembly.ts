import { joinedPieces, wayOut } from '../../basics/assemblyOrder.ts';
import type { Panel, PlacedAssembly, PlacedUnit } from '../../model/furniture.ts';
import type { Face } from '../../model/geometry.ts';
import type { AssemblyWay } from '../../model/library.ts';
import type { AssemblyWords } from '../words/assemblyWords.ts';
import { panelsInWords } from './panelsInWords.ts';

/** Sentences by which a unit is put together, without those about fittings. */
export interface WrittenSteps {
  /** What is fixed to wall or body before the rest. */
  readonly toTheBody: readonly string[];
  readonly carcass: readonly string[];
  /** What is held by fittings or lies loose, once the carcass stands. */
  readonly after: readonly string[];
}

/** Ways of what comes once the carcass stands, where nothing else follows: boards that are slid in last come out again. */
const AFTERWARDS: readonly AssemblyWay[] = ['slide in', 'hang', 'lay loose'];
/** Ways by which panels are joined to each other. */
const JOINS: readonly AssemblyWay[] = ['put', 'apart', 'lift in'];
/** Fewer panels that are joined have no diagonals to compare. */
const LEAST_SQUARE = 3;

/**
 * The steps that a unit's file gives, in sentences: `joints` with the first that joins panels, and the word to see that it is
 * square with the first after which there are enough of them.
 */
export function asWritten(
  unit: PlacedUnit,
  assembly: readonly PlacedAssembly[],
  says: AssemblyWords,
  joints: string | null,
): WrittenSteps {
  const byId = new Map(unit.panels.map((panel) => [panel.id, panel]));
  const steps = assembly.map(({ way, panels }) => ({
    way,
    panels: panels.flatMap((id) => byId.get(id) ?? []),
  }));
  const fixed = steps.findLastIndex(({ way }) => way === 'to the body') + 1;
  const stands = steps.findLastIndex(({ way }) => !AFTERWARDS.includes(way)) + 1;
  const firstJoin = steps.findIndex(({ way, panels }) => JOINS.includes(way) || isMadeFirst(way, panels));
  const squareAt = steps.findIndex(({ way }, index) => {
    const soFar = steps
      .slice(0, index + 1)
      .filter((step) => step.way === 'begin' || JOINS.includes(step.way));
    return JOINS.includes(way) && soFar.reduce((sum, { panels }) => sum + panels.length, 0) >= LEAST_SQUARE;
  });
  const sentences = steps.map(({ way, panels }, index) => {
    const there = steps.slice(0, index).flatMap((step) => step.panels);
    const { made, set } = inWords(way, panels, { unit, there, says });
    return [
      made,
      ...(index === Math.max(0, firstJoin) && joints !== null ? [joints] : []),
      ...(index === squareAt ? [says.square] : []),
      ...(set === undefined ? [] : [set]),
    ].join(' ');
  });
  return {
    toTheBody: sentences.slice(0, fixed),
    carcass: sentences.slice(fixed, stands),
    after: sentences.slice(Math.max(fixed, stands)),
  };
}

/** Loose boards with cleats or ribs, and what goes to the wall with a ledge, are joined before they are in their place. */
function isMadeFirst(way: AssemblyWay, panels: readonly Panel[]): boolean {
  const comesAsOne = way === 'lay loose' || way === 'to the body';
  return comesAsOne && joinedPieces(panels).some((piece) => piece.length > 1);
}

/** One step: what is done on the bench or in place, and how what was made there comes to its place. */
interface StepWords {
  readonly made: string;
  readonly set?: string;
}

interface Around {
  readonly unit: PlacedUnit;
  /** What stands already. */
  readonly there: readonly Panel[];
  readonly says: AssemblyWords;
}

function inWords(way: AssemblyWay, panels: readonly Panel[], around: Around): StepWords {
  const { unit, there, says } = around;
  const { written } = says;
  const list = panelsInWords(panels);
  const pieces = joinedPieces(panels).map(panelsInWords);
  const made = written.apart(pieces);
  switch (way) {
    case 'begin':
      return { made: says.begin.between(list) };
    case 'put':
      return { made: there.length === 0 ? says.begin.between(list) : written.put(list) };
    case 'slide in': {
      const from = slidesFrom(panels, there);
      return { made: from === null ? written.slideIn(list) : says.slide(list, from) };
    }
    case 'apart':
      return { made };
    case 'lift in':
      return { made, set: written.set.liftIn(pieces.length) };
    case 'to the body':
      return isMadeFirst(way, panels)
        ? { made, set: written.set.toTheBody(pieces.length) }
        : { made: written.toTheBody(list) };
    case 'to its neighbours':
      return { made: written.toItsNeighbours(list) };
    case 'hang': {
      const isFront = panels.every(
        ({ thicknessAxis, box }) => thicknessAxis === 'y' && box.y[0] === unit.outside.y[0],
      );
      return { made: isFront ? says.fronts(list) : written.hang(list) };
    }
    case 'lay loose':
      return isMadeFirst(way, panels)
        ? { made, set: written.set.layLoose(pieces.length) }
        : { made: written.layLoose(list) };
  }
}

/** The side from which panels slide in one after the other past what is there; null where it is not the same for all. */
function slidesFrom(panels: readonly Panel[], there: readonly Panel[]): Face | null {
  const sides = new Set(panels.map((panel, index) => wayOut(panel, [...there, ...panels.slice(0, index)])));
  const [side] = sides;
  return sides.size === 1 ? (side ?? null) : null;
}
