import type { Place } from './finding.ts';
import type { Facing } from './geometry.ts';
import type { Formula } from './library.ts';

/** Board, finish and edging for everything that has one role. */
export interface RoleChoice {
  readonly board: string;
  readonly finish: string;
  /** Edging id; null when edges of this role stay raw. */
  readonly edging: string | null;
  readonly place: Place;
}

/** A small change to the layout, asked for by the customer. */
export type OrderChange =
  | {
      readonly kind: 'set';
      readonly unit: string;
      readonly set: ReadonlyMap<string, Formula>;
      readonly place: Place;
    }
  | { readonly kind: 'leave out'; readonly unit: string; readonly place: Place }
  | {
      readonly kind: 'add';
      readonly name: string;
      readonly unit: string;
      readonly at: { readonly x: Formula; readonly y: Formula; readonly z: Formula };
      readonly facing: Facing;
      readonly set: ReadonlyMap<string, Formula>;
      readonly place: Place;
    };

/** What one customer asked for. */
export interface Order {
  /** Safe as a folder name; taken from the file's name unless the file says otherwise. */
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly library: string;
  readonly layout: string;
  readonly vehicle: string;
  readonly saw: string;
  /** How many alike. */
  readonly count: number;
  /** Who rides in the vehicle, the driver included; the layout's choices, or else its seats, where the order does not say. */
  readonly persons?: number;
  /** Kg that are to lie on the roof of the vehicle, part of what is loaded. */
  readonly onRoofKg?: number;
  readonly choices: ReadonlyMap<string, Formula>;
  readonly roles: ReadonlyMap<string, RoleChoice>;
  readonly changes: readonly OrderChange[];
  /** Day on which work on it begins, such as 2026-05-04; absent where the order does not say. */
  readonly start?: string;
  /** Roles whose panels share no sheet with other orders; absent for none. */
  readonly ownSheets?: readonly string[];
  /** Pieces that fall out of large cut-outs: whether they are squared up and kept for another job. */
  readonly cutOutPieces?: 'kept' | 'waste';
  readonly place: Place;
}
