import type { AssemblyKind } from '../../basics/assemblyOrder.ts';
import type { Face } from '../../model/geometry.ts';

/** Words of the steps by which a unit is put together; `panels` are numbers with names. */
export interface AssemblyWords {
  readonly heading: string;
  /** A unit that is one panel. */
  readonly alone: (panels: string) => string;
  /** What the first step begins with. */
  readonly begin: Readonly<Record<AssemblyKind, (panels: string) => string>>;
  readonly put: Readonly<Record<AssemblyKind, (panels: string) => string>>;
  /** Into grooves of what stands already. */
  readonly slide: (panels: string, from: Face) => string;
  /** With which screws panels are joined. */
  readonly joints: (screws: string) => string;
  readonly square: string;
  /** Where edges were left over for scribing. */
  readonly wall: string;
  readonly fronts: (panels: string) => string;
  /** What is held by fittings, is no front and one panel. */
  readonly held: (panels: string) => string;
  /** What is put together for itself first: one piece, or several. */
  readonly apart: (pieces: readonly string[]) => string;
  /** Steps that a unit writes itself. */
  readonly written: {
    readonly put: (panels: string) => string;
    /** Into grooves, some from another side than others. */
    readonly slideIn: (panels: string) => string;
    readonly apart: (pieces: readonly string[]) => string;
    /** Follows `apart`: how what was made comes to its place, by the number of pieces. */
    readonly set: Readonly<Record<'liftIn' | 'toTheBody' | 'layLoose', (pieces: number) => string>>;
    readonly toTheBody: (panels: string) => string;
    readonly toItsNeighbours: (panels: string) => string;
    /** What is not on the front. */
    readonly hang: (panels: string) => string;
    readonly layLoose: (panels: string) => string;
  };
  readonly fittings: (list: string) => string;
  /** Fittings before anything else, and when all is in its place. */
  readonly firstFittings: (list: string) => string;
  readonly lastFittings: (list: string) => string;
}
