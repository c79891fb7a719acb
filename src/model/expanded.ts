import type { Place } from './finding.ts';
import type { CountedFitting } from './furniture.ts';
import type { Axis, Box, Extent, Face, Facing, Um } from './geometry.ts';
import type { AssemblyWay, Vehicle } from './library.ts';

/** A panel of a unit as a box with whole µm: what the formulas came to, before board, edging and sizes. */
export interface ExpandedPanel {
  /** As printed, unique within its outermost unit: `drawer 1 front`. */
  readonly name: string;
  /** The same without the number that a repeat gave it. */
  readonly baseName: string;
  readonly role: string;
  readonly place: Place;
  /** In the frame of the outermost unit. */
  readonly box: Box;
  readonly grain: Axis | null;
  readonly edging: readonly Face[];
  readonly cutOuts: readonly ExpandedCutOut[];
  readonly holes: readonly ExpandedHole[];
  /** Names of panels of the same outermost unit that it may be let into, and how deep. */
  readonly housings: readonly {
    readonly into: readonly string[];
    readonly depthUm: Um;
    readonly place: Place;
  }[];
  /** Edge faces that follow the wall they look to, and what is left on for scribing. */
  readonly followsWall?: readonly {
    readonly face: 'left' | 'right' | 'front' | 'back';
    readonly allowanceUm: Um;
    readonly place: Place;
  }[];
  /** What it is to bear, in kg. */
  readonly loadKg?: number;
  /** Name of a row of fronts, within the outermost unit. */
  readonly match: string | null;
}

/** In the outermost unit's frame; null along the axis that the opening runs through. */
export interface ExpandedCutOut {
  readonly name: string;
  readonly place: Place;
  readonly x: Extent | null;
  readonly y: Extent | null;
  readonly z: Extent | null;
}

/** Its middle in the outermost unit's frame; null along the axis of `from`. */
export interface ExpandedHole {
  /** `pin 3`, or with the name of the pattern's hole `hinge 1 cup`. */
  readonly name: string;
  readonly place: Place;
  readonly x: Um | null;
  readonly y: Um | null;
  readonly z: Um | null;
  readonly from: Face;
  readonly diameterUm: Um;
  /** Null right through. */
  readonly depthUm: Um | null;
  /** The screw that goes through it and on into the panel behind. */
  readonly screw?: { readonly fitting: string; readonly lengthUm: Um; readonly intoUm: Um };
}

/** An appliance in the outermost unit's frame; panels by name. */
export interface ExpandedAppliance {
  readonly name: string;
  readonly appliance: string;
  readonly title: string;
  readonly massKg: number | null;
  readonly body: Box;
  readonly through: readonly string[];
  readonly air: Readonly<
    Record<'in' | 'out', readonly { readonly panels: readonly string[]; readonly cutOut: string }[]>
  >;
  readonly place: Place;
}

/** A unit with its parameters settled, where it stands in the vehicle. */
export interface ExpandedUnit {
  readonly name: string;
  readonly unit: string;
  readonly place: Place;
  readonly facing: Facing;
  readonly parameters: ReadonlyMap<string, number | string>;
  readonly outside: Box;
  readonly placeOutside: Box;
  readonly panels: readonly ExpandedPanel[];
  /** One of `panels` is held by fittings to one of `on`, across exactly `gapUm`; panels by name. */
  readonly hangings: readonly {
    readonly panels: readonly string[];
    readonly on: readonly string[];
    readonly gapUm: Um;
    readonly place: Place;
  }[];
  /** How it goes together, where its file says so: each panel once, by name. */
  readonly assembly?: readonly { readonly way: AssemblyWay; readonly panels: readonly string[] }[];
  readonly fittings: readonly CountedFitting[];
  readonly appliances?: readonly ExpandedAppliance[];
  /** Cautions of this unit and the units inside it, by id. */
  readonly cautions?: readonly string[];
}

/** An order with every formula worked out: what stands where in which vehicle. */
export interface ExpandedOrder {
  readonly order: string;
  readonly count: number;
  readonly vehicle: Vehicle;
  /** Of the layout. */
  readonly seats?: number;
  /** How many of them are taken, where the layout reads it from its choices. */
  readonly persons?: number;
  /** Of the layout, where it says so. */
  readonly sleepingPlaces?: number;
  readonly cautions?: readonly string[];
  readonly units: readonly ExpandedUnit[];
}
