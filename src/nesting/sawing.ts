import type { Um } from '../model/geometry.ts';
import type { NestPiece } from '../model/nest.ts';

/** Depth of stacks and fence settings that a tree takes, before anything is sawn: what ties are settled by. */
export interface Sawing {
  /** Levels of alternating stacks, 0 for a sheet that is used whole; one less is the number of turns. */
  readonly levels: number;
  /** Different settings of each level added up, as equal ones of a level are sawn together. */
  readonly fenceSettings: number;
}

/** Counts what a tree takes on the saw; trims and the parting of blanks are the same for every tree. */
export function sawingOf(root: NestPiece): Sawing {
  const settings = new Set<string>();
  let levels = 0;
  const visit = (piece: NestPiece, level: number): void => {
    if (piece.kind !== 'stack') return;
    levels = Math.max(levels, level);
    const size = (child: NestPiece) => (piece.axis === 'x' ? child.xUm : child.yUm);
    const last = piece.children.at(-1)!;
    const used = piece.children.reduce((sum, child) => sum + size(child), 0);
    for (const child of piece.children) {
      // The last piece stands alone once the one before is cut off, unless a scrape is left beyond it.
      const standsAlone = child === last && (piece.children.length > 1 || used === size(piece));
      if (!standsAlone && child.kind !== 'spare') settings.add(`${level} ${piece.axis} ${size(child)}`);
      visit(child, level + 1);
    }
  };
  visit(root, 1);
  return { levels, fenceSettings: settings.size };
}

/**
 * Size in µm, along the first stack, of the larger piece that the first parting of a sheet gives where its largest
 * strip is cut off first: the smaller, the earlier a heavy sheet is divided.
 */
export function largestParted(root: NestPiece & { kind: 'stack' }, kerfUm: Um): Um {
  const along = (piece: NestPiece) => (root.axis === 'x' ? piece.xUm : piece.yUm);
  const cutFirst = root.children.reduce(
    (most, child) => (child.kind === 'spare' ? most : Math.max(most, along(child))),
    0,
  );
  return Math.max(cutFirst, along(root) - cutFirst - kerfUm);
}
