import type { Place } from './finding.ts';
import type { Axis, Box, Face, Facing, Um } from './geometry.ts';
import type { AssemblyWay } from './library.ts';
import type { OutlinePoint, Part } from './part.ts';

export interface PanelEdge {
  readonly face: Face;
  readonly edging: string | null;
  /** Length of the finished edge. */
  readonly lengthUm: Um;
}

/** An opening right through a panel, in the panel's own plane, from the corner at length 0 and width 0 of the finished panel. */
export interface CutOut {
  readonly name: string;
  readonly alongLength: readonly [Um, Um];
  readonly alongWidth: readonly [Um, Um];
}

/** A round hole in a broad face, its middle from the corner at length 0 and width 0 of the finished panel. */
export interface Hole {
  readonly name: string;
  readonly alongLengthUm: Um;
  readonly alongWidthUm: Um;
  readonly diameterUm: Um;
  /** Null right through. */
  readonly depthUm: Um | null;
  /** The broad face that the drill enters, in the unit's frame. */
  readonly face: Face;
  /** Where it is written. */
  readonly place?: Place;
}

/** A round hole in an edge, square to it, where it lies on the finished panel. */
export interface EdgeHole {
  readonly name: string;
  /** The edge that the drill enters, in the unit's frame. */
  readonly face: Face;
  /** Along the edge, from the panel's corner at length 0 and width 0. */
  readonly alongUm: Um;
  /** Through the thickness, from the broad face at the low end of its axis. */
  readonly acrossUm: Um;
  readonly diameterUm: Um;
  readonly depthUm: Um;
  /** Where the screw is written that goes into it. */
  readonly place?: Place;
}

/** A panel of a unit, where it stands. It is a part, and everything the part says follows from its box. */
export interface Panel extends Part {
  /** Running number within the order, from 1, for labels and drawings. */
  readonly number: number;
  /** Name of the panel without the number a repeat gave it. */
  readonly baseName: string;
  readonly role: string;
  /** In the frame of the outermost unit it belongs to. */
  readonly box: Box;
  /** In the vehicle's frame. */
  readonly placeBox: Box;
  /** Which axis of the unit's frame each of its three sizes runs along. */
  readonly lengthAxis: Axis;
  readonly widthAxis: Axis;
  readonly thicknessAxis: Axis;
  readonly edges: readonly PanelEdge[];
  readonly cutOuts: readonly CutOut[];
  readonly holes: readonly Hole[];
  /** Absent where there are none. */
  readonly edgeHoles?: readonly EdgeHole[];
  /**
   * Its true shape where the wall takes something off its rectangle: as it stands, from the finished panel's corner at
   * length 0 and width 0, counter-clockwise with the length to the right. It touches all four sides of the rectangle.
   * What the sawn part is cut to, with the allowance for scribing, is `byHand.outline`. Absent for a rectangle.
   */
  readonly outline?: readonly OutlinePoint[];
  /** Edges along a wall, by face of the unit's frame, with what is left on the sawn part to be scribed to the wall. */
  readonly scribed?: readonly { readonly face: Face; readonly allowanceUm: Um }[];
  /** What it is to bear, spread evenly, in kg; absent where its role says. */
  readonly loadKg?: number;
  /** Panels (by id) this one is let into, with the declared depth. */
  readonly housings: readonly { readonly into: string; readonly depthUm: Um }[];
  /** Where its box is written. */
  readonly place?: Place;
  /** Board and edging of one finished piece; cut-outs and what the wall takes off are not in it. */
  readonly massKg: number;
}

/** A unit with its parameters settled, standing in the vehicle. */
export interface PlacedUnit {
  /** As named in the layout: `galley sink`. */
  readonly name: string;
  /** Id of its definition. */
  readonly unit: string;
  readonly facing: Facing;
  readonly parameters: ReadonlyMap<string, number | string>;
  /** In its own frame and in the vehicle's. */
  readonly outside: Box;
  readonly placeOutside: Box;
  readonly panels: readonly Panel[];
  readonly fittings: readonly CountedFitting[];
  /** Cautions of this unit and the units inside it, by id; those of its fittings are in the library. */
  readonly cautions?: readonly string[];
  readonly appliances?: readonly PlacedAppliance[];
  /** What fittings hold to what. */
  readonly hangings?: readonly Hanging[];
  /** How it goes together, where its file says so. */
  readonly assembly?: readonly PlacedAssembly[];
  /** Where it is placed. */
  readonly place?: Place;
}

/** An appliance where it stands; panels by id. */
export interface PlacedAppliance {
  readonly name: string;
  readonly appliance: string;
  /** Of its entry in the library. */
  readonly title: string;
  /** In kg, empty; null where its entry does not say. */
  readonly massKg: number | null;
  /** Its body in the frame of the unit that holds it. */
  readonly body: Box;
  /** Panels in whose opening it hangs. */
  readonly through: readonly string[];
  /** Openings that its air passes one after the other. */
  readonly air: Readonly<
    Record<'in' | 'out', readonly { readonly panels: readonly string[]; readonly cutOut: string }[]>
  >;
  readonly place: Place;
}

/** How many of a fitting a unit takes, and in words where those go that no hole says it of. */
export interface CountedFitting {
  readonly fitting: string;
  readonly count: number;
  /** How many of them go through holes of panels that name them; absent where no hole does. */
  readonly inHoles?: number;
  readonly where?: readonly string[];
}

/** Panels that are put on in one step of a unit whose file says how it goes together; by id. */
export interface PlacedAssembly {
  readonly way: AssemblyWay;
  readonly panels: readonly string[];
}

/** One of `panels` is held to one of `on` by fittings that bridge exactly `gapUm`; panels by id. */
export interface Hanging {
  readonly panels: readonly string[];
  readonly on: readonly string[];
  readonly gapUm: Um;
  readonly place: Place;
}

/** Everything one order asks for, in place. */
export interface Furniture {
  readonly order: string;
  readonly count: number;
  readonly units: readonly PlacedUnit[];
  /** How many persons can ride, with the driver, where the layout says so. */
  readonly seats?: number;
  /** How many ride by the choices of the layout, with the driver, where it says so. */
  readonly persons?: number;
  /** How many persons can sleep in it, where the layout says so. */
  readonly sleepingPlaces?: number;
  /** Cautions that the layout as a whole brings, by id. */
  readonly cautions?: readonly string[];
}

/** In what a panel of a changed order may differ from what it was. */
export const panelAspects = [
  'board',
  'finish',
  'thickness',
  'size',
  'cut size',
  'grain',
  'edging',
  'row',
  'outline',
  'openings',
  'holes',
] as const;
export type PanelAspect = (typeof panelAspects)[number];
