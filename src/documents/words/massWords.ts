import type { PersonsFrom } from '../../basics/payload.ts';

/** Words about what furniture weighs. Masses come in as printed, in kg. */
export interface MassWords {
  readonly heading: string;
  readonly intro: string;
  readonly byUnit: string;
  /** Unit, boards, edging, fittings, appliances, together, left, right, front, rear. */
  readonly columns: readonly string[];
  readonly all: string;
  readonly centre: (
    fromFront: string,
    fromMiddle: string,
    side: 'left' | 'right' | 'middle',
    above: string,
  ) => string;
  readonly account: string;
  readonly accountColumns: readonly [string, string];
  readonly payload: (vehicle: string) => string;
  readonly furniture: string;
  /** Where the library has the mass of some. */
  readonly appliances: string;
  readonly passengers: (count: number, eachKg: number) => string;
  readonly left: string;
  readonly least: (persons: number, lengthM: string, eachKg: number) => string;
  readonly rest: string;
  readonly persons: (count: number, from: PersonsFrom) => string;
  /** Where one side carries much more than the other: how far the centre is aside, and what would bring it back. */
  readonly uneven: (heavy: 'left' | 'right', percent: number, aside: string, evenedByKg: string) => string;
  /** Where less is left than must be kept. */
  readonly tooLittle: string;
  readonly source: string;
}
