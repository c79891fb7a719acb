/** A length in whole micrometres. Every length inside the program is one; millimetres exist only in files and documents. */
export type Um = number;

export type Axis = 'x' | 'y' | 'z';

/** From and to, in µm, `from < to`. */
export type Extent = readonly [from: Um, to: Um];

/**
 * A box in µm. In a unit's own frame: x from left to right, y from front to back, z up.
 * In the vehicle's or room's frame: x from the cab (a room's front end) to the rear, y from the left side to the right, z up from the floor.
 */
export interface Box {
  readonly x: Extent;
  readonly y: Extent;
  readonly z: Extent;
}

/** The six faces of a box in a unit's frame. */
export type Face = 'left' | 'right' | 'front' | 'back' | 'bottom' | 'top';

/** Where a unit's front looks in the vehicle. */
export type Facing = 'left' | 'right' | 'front' | 'rear';
