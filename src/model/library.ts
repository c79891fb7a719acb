import type { CautionText } from './cautions.ts';
import type { Place } from './finding.ts';
import type { Face, Facing, Um } from './geometry.ts';
import type { Rates } from './rates.ts';
import type { SawRules } from './stock.ts';

/** Files by path, `/` between folders, as a reader at the edge hands them over. */
export type TextFiles = ReadonlyMap<string, string>;

/** A formula as written, with where it stands, so that an error can point at the character. A number is a formula too. */
export interface Formula {
  readonly text: string;
  readonly place: Place;
}

export interface Board {
  readonly id: string;
  readonly title: string;
  readonly core: string;
  readonly thicknessUm: Um;
  readonly arealMassKgPerM2: number;
  readonly decoratedFaces: 0 | 1 | 2;
  /** Modulus of elasticity in bending along and across the grain of the face, in MPa (N/mm²); absent where not stated. */
  readonly stiffnessMPa?: { readonly along: number; readonly across: number };
}

export interface Finish {
  readonly id: string;
  readonly title: string;
  /** Whether the finish has a direction that must be kept. */
  readonly grain: boolean;
  /** How drawings show it: a tone from 0 (white) to 1 (black) and a hatch that also reads in black and white. */
  readonly tone: number;
  readonly hatch: 'none' | 'lines' | 'dots' | 'cross' | 'wood';
}

/** What one costs from a number on: of sheets each, of edging each metre from so many rolls on, of fittings each piece. */
export interface PriceBreak {
  readonly from: number;
  readonly priceMinor: number;
}

/** How something is bought; all of it may be left out. */
export interface Purchasing {
  /** Id of a supplier. */
  readonly supplier?: string;
  /** By rising number. */
  readonly breaks?: readonly PriceBreak[];
  /** Least that is sold at a time: sheets, rolls of edging, pieces of a fitting. */
  readonly least?: number;
}

/** Who sells. */
export interface Supplier {
  readonly id: string;
  readonly title: string;
  /** Lines for the head of a request: address, customer number. */
  readonly contact: readonly string[];
  /** Working days from the day of the order to the day on which the goods are there. */
  readonly deliveryDays: number;
  /** Orders below it are not taken; null for any. */
  readonly leastOrderMinor: number | null;
  /** Asked for bringing the goods. */
  readonly deliveryMinor: number;
  /** Value of an order from which on nothing is asked for bringing it; null where there is no such value. */
  readonly freeDeliveryFromMinor: number | null;
}

export interface Edging extends Purchasing {
  readonly id: string;
  readonly title: string;
  /** The finish it belongs to. */
  readonly finish: string;
  readonly thicknessUm: Um;
  readonly widthUm: Um;
  /** Whether the sawn size is made smaller by its thickness. */
  readonly deducted: boolean;
  /** Taken off each edged side by the edging machine before gluing; the sawn size is made larger by it. */
  readonly preMillingUm: Um;
  /** How much longer than the edge each strip is cut. */
  readonly overlengthUm: Um;
  readonly massKgPerM: number;
  readonly priceMinorPerM: number;
  readonly rollM: number;
}

/** When a fitting is put on: before anything else, with every joint, when the carcass stands, or when all else is in its place. */
export const FITTED = ['first', 'in the joints', 'once it stands', 'last'] as const;

export interface Fitting extends Purchasing {
  readonly id: string;
  readonly title: string;
  readonly massKg: number;
  /** Of one piece; they are bought in whole packs. */
  readonly priceMinor: number;
  readonly pack: number;
  /** Where it goes, in words, unless the unit says it. */
  readonly where?: string;
  /** Absent: once the carcass stands. */
  readonly fitted?: (typeof FITTED)[number];
  /** What a unit with this fitting needs care with, by the id of a caution. */
  readonly cautions?: readonly string[];
  /** Of a screw from panel to panel: how long it is and the holes that it takes. */
  readonly screw?: {
    readonly lengthUm: Um;
    /** Wide enough for it to slide through the panel that it holds. */
    readonly throughUm: Um;
    /** Narrow enough for its thread to hold in the panel behind. */
    readonly intoUm: Um;
  };
}

/** The sides of an appliance as one stands before it. */
export const APPLIANCE_SIDES = ['left', 'right', 'front', 'back', 'above', 'below'] as const;
export type ApplianceSide = (typeof APPLIANCE_SIDES)[number];

/** An appliance with the room that it asks for, as its manual has it. */
export interface Appliance {
  readonly id: string;
  readonly title: string;
  /** Its body, doors and handles included. */
  readonly widthUm: Um;
  readonly depthUm: Um;
  readonly heightUm: Um;
  /** Of one that hangs in a level board by its rim: the least opening that its body goes through. Absent for any other. */
  readonly openingUm?: { readonly width: Um; readonly depth: Um };
  /** What must stay free of boards, walls and other appliances on each side, straight out from its body. */
  readonly clearUm: Readonly<Record<ApplianceSide, Um>>;
  /** The edge of its front about which its door opens; null without a door. A door is as wide, or as high, as the body. */
  readonly door: ApplianceHinges | null;
  /** Free area of the openings for the air that it takes in and gives off, in cm²; 0 where it needs none. */
  readonly airCm2: { readonly in: number; readonly out: number };
  /** In kg, empty; null where its entry does not say. */
  readonly massKg: number | null;
  /** What a unit with it needs care with, by the id of a caution. */
  readonly cautions?: readonly string[];
}

export type ApplianceHinges = 'left' | 'right' | 'top' | 'bottom';

/** Where a unit has room for an appliance. */
export interface ApplianceUse {
  readonly name: string;
  readonly place: Place;
  /** The id of an appliance, or a formula that comes to one. */
  readonly appliance: Formula;
  /** The left front lower corner of its body. */
  readonly at: { readonly x: Formula; readonly y: Formula; readonly z: Formula };
  readonly when: Formula | null;
  /** Panels of the unit in whose opening it hangs: they may touch it. */
  readonly through: readonly { readonly panel: string; readonly place: Place }[];
  /** Openings of panels of the unit that its air passes one after the other, by panel. */
  readonly air: Readonly<
    Record<
      'in' | 'out',
      readonly { readonly panel: string; readonly cutOut: string; readonly place: Place }[]
    >
  >;
}

/** Holes that are always drilled together, as for the cup of a hinge, from the point at which the pattern is put. */
export interface DrillingPattern {
  readonly id: string;
  readonly title: string;
  readonly holes: readonly {
    readonly name: string;
    /** In the direction in which the pattern is laid, and to both sides of it. */
    readonly alongUm: Um;
    readonly acrossUm: Um;
    readonly diameterUm: Um;
    /** Null right through. */
    readonly depthUm: Um | null;
  }[];
}

/** A size of sheet that can be bought in one board and finish. */
export interface SheetOffer extends Purchasing {
  readonly id: string;
  readonly board: string;
  readonly finish: string;
  readonly lengthUm: Um;
  readonly widthUm: Um;
  readonly grain: 'length' | 'width' | 'none';
  readonly priceMinor: number;
  /** How many can be had; null for any number. */
  readonly count: number | null;
  /** How many come in a pack, of which only whole ones are sold; 1 where absent. */
  readonly pack?: number;
}

export interface Saw extends SawRules {
  readonly id: string;
  /** The same on each side unless the file says otherwise. */
  readonly trimUm: { readonly left: Um; readonly right: Um; readonly near: Um; readonly far: Um };
}

/** A body that cannot be built in, as a box in the vehicle's frame: a wheel arch, a step. */
export interface Obstacle {
  readonly name: string;
  readonly x: readonly [Um, Um];
  readonly y: readonly [Um, Um];
  readonly z: readonly [Um, Um];
}

/** An opening that must stay free of furniture, in the vehicle's frame. */
export interface DoorOpening extends Obstacle {}

export interface Vehicle {
  readonly id: string;
  readonly title: string;
  readonly insideLengthUm: Um;
  readonly insideHeightUm: Um;
  /** Inner width at heights above the floor, lowest first; straight lines between. */
  readonly widthAtHeight: readonly { readonly heightUm: Um; readonly widthUm: Um }[];
  readonly wheelArches: readonly Obstacle[];
  readonly doors: readonly DoorOpening[];
  /** Anything else that furniture must not stand in: a pillar, a chimney, a step. */
  readonly obstacles?: readonly Obstacle[];
  /** Overall length, for the minimum payload rule; the inside length where none is stated. */
  readonly overallLengthUm: Um;
  /**
   * Kg beside the mass in running order, which has the driver in it: for conversion, passengers and load, as the owner of
   * the file states it; null for a room, which bears any.
   */
  readonly payloadKg: number | null;
  /** Kg that may lie on the roof, on one that opens while it is open; absent where the file does not say. */
  readonly roofBearsKg?: number;
}

export type ParameterValue = number | string;

/** A parameter of a unit or a layout. Numbers are millimetres in the file unless `whole` says that it counts. */
export type ParameterDefinition =
  | {
      readonly kind: 'length';
      readonly name: string;
      readonly default: Formula;
      readonly least: Formula | null;
      readonly most: Formula | null;
      readonly note: string;
      readonly place: Place;
    }
  | {
      readonly kind: 'count';
      readonly name: string;
      readonly default: Formula;
      readonly least: Formula | null;
      readonly most: Formula | null;
      readonly note: string;
      readonly place: Place;
    }
  | {
      readonly kind: 'choice';
      readonly name: string;
      readonly default: string;
      readonly choices: readonly string[];
      readonly note: string;
      readonly place: Place;
    };

export type FormulaExtent = readonly [from: Formula, to: Formula];

/** Repeats a panel or a unit: `counter` runs from 1 to `count` and can be used in its formulas. */
export interface Repeat {
  readonly counter: string;
  readonly count: Formula;
}

export interface PanelDefinition {
  readonly name: string;
  readonly place: Place;
  /** What the panel is for; the order gives a board and finish per role. */
  readonly role: string;
  readonly x: FormulaExtent;
  readonly y: FormulaExtent;
  readonly z: FormulaExtent;
  /** The axis the grain runs along, or null when it does not matter (hidden panels that may be turned). */
  readonly grain: 'x' | 'y' | 'z' | null;
  /** Faces that get edging; all six stand for `all`, which means the four edges. */
  readonly edging: readonly Face[];
  readonly when: Formula | null;
  readonly repeat: Repeat | null;
  /** Panels of the same unit (by name; a repeated panel by its name without number) this one is let into, and how deep. */
  readonly housings: readonly { readonly into: string; readonly depth: Formula; readonly place: Place }[];
  /**
   * Panels of the same unit that hold this one by fittings (hinges, runners, screws through a gap), and the gap that
   * the fitting bridges, no more and no less. A door touches nothing, its hinges hold it to a side across 1 mm.
   */
  readonly heldBy?: readonly HeldBy[];
  /** Openings right through the panel, as extents along the two axes of its sides. */
  readonly cutOuts: readonly CutOutDefinition[];
  readonly holes: readonly HoleDefinition[];
  /** Edge faces that take their shape from the wall they look to, and how much is left on for scribing. */
  readonly followsWall?: readonly FollowedWall[];
  /** What it is to bear, spread evenly, in kg. */
  readonly load?: Formula;
  /** Name of a row of fronts over which the grain runs on. */
  readonly match: string | null;
}

export interface FollowedWall {
  readonly face: 'left' | 'right' | 'front' | 'back';
  readonly allowance: Formula;
  readonly place: Place;
}

/** Named as in `housings`. */
export interface HeldBy {
  readonly panel: string;
  readonly gap: Formula;
  readonly place: Place;
}

/** A hole, or a pattern of holes, drilled into a broad face of a panel. */
export interface HoleDefinition {
  readonly name: string;
  readonly place: Place;
  readonly when: Formula | null;
  /** Its counter can be used beside the panel's own. */
  readonly repeat: Repeat | null;
  /** The middle, in the unit's frame: exactly the two axes of the panel's sides. */
  readonly at: { readonly x: Formula | null; readonly y: Formula | null; readonly z: Formula | null };
  /** The face that the drill enters. */
  readonly from: Face;
  readonly drill:
    | {
        readonly kind: 'hole';
        readonly diameter: Formula /** Null right through. */;
        readonly depth: Formula | null;
      }
    /** For a screw of the library: right through, and on into the panel behind. */
    | { readonly kind: 'screw'; readonly fitting: string }
    /** A pattern of the library, its `along` pointing to the face `towards`. */
    | { readonly kind: 'pattern'; readonly pattern: string; readonly towards: Face };
}

export interface CutOutDefinition {
  readonly name: string;
  readonly place: Place;
  readonly when: Formula | null;
  /** Exactly the two axes of the panel's sides are given. */
  readonly x: FormulaExtent | null;
  readonly y: FormulaExtent | null;
  readonly z: FormulaExtent | null;
}

export interface FittingUse {
  readonly fitting: string;
  readonly count: Formula;
  readonly when: Formula | null;
  /** Where they go, in words, for those that no hole says it of. */
  readonly where?: string;
  readonly place: Place;
}

/**
 * How panels come to a unit, where it is not put together as their boxes say. `apart` is made for itself and put to the rest by a
 * later step; `lift in` is made for itself and set in its place; `lay loose` lifts out again.
 */
export const ASSEMBLY_WAYS = [
  'begin',
  'put',
  'slide in',
  'apart',
  'lift in',
  'to the body',
  'to its neighbours',
  'hang',
  'lay loose',
] as const;
export type AssemblyWay = (typeof ASSEMBLY_WAYS)[number];

/** Panels of a unit, or of whole units inside it, that are put on in one step. */
export interface AssemblyUse {
  readonly way: AssemblyWay;
  /** Of panels as in `housings`, or of units inside; what is named for itself is left out of a unit. */
  readonly names: readonly { readonly name: string; readonly place: Place }[];
}

/** A caution that a unit or a layout brings, by its id: a word of the program or of the library. */
export interface CautionUse {
  readonly caution: string;
  readonly when: Formula | null;
  readonly place: Place;
}

/** A unit used inside another, or placed in a layout. */
export interface UnitUse {
  readonly name: string;
  readonly place: Place;
  readonly unit: string;
  readonly at: { readonly x: Formula; readonly y: Formula; readonly z: Formula };
  /** In a layout: where the front looks. Inside a unit always `front`, which leaves the frame as it is. */
  readonly facing: Facing;
  /** Values by parameter. A word given to a choice stands in quotes, so that it can be evaluated like any formula. */
  readonly set: ReadonlyMap<string, Formula>;
  readonly when: Formula | null;
  readonly repeat: Repeat | null;
  /** Inside a unit: panels of the outer unit that hold this one as a whole, as runners hold a drawer. */
  readonly heldBy?: readonly HeldBy[];
}

export interface UnitDefinition {
  readonly id: string;
  readonly title: string;
  readonly file: string;
  readonly parameters: readonly ParameterDefinition[];
  /** Formulas by name, in any order. */
  readonly names: ReadonlyMap<string, Formula>;
  /** The outside box the unit fills, from the origin of its frame. */
  readonly outside: { readonly x: FormulaExtent; readonly y: FormulaExtent; readonly z: FormulaExtent };
  readonly panels: readonly PanelDefinition[];
  readonly units: readonly UnitUse[];
  readonly fittings: readonly FittingUse[];
  readonly cautions?: readonly CautionUse[];
  readonly appliances?: readonly ApplianceUse[];
  /** Step by step, each panel once; absent where the boxes say how it goes together. */
  readonly assembly?: readonly AssemblyUse[];
  /** Conditions on the parameters that must hold, with the sentence to say when one does not. */
  readonly musts: readonly { readonly that: Formula; readonly says: string; readonly place: Place }[];
}

export interface LayoutDefinition {
  readonly id: string;
  readonly title: string;
  readonly file: string;
  /** Vehicles it is drawn for. */
  readonly vehicles: readonly string[];
  /** What the customer chooses. */
  readonly choices: readonly ParameterDefinition[];
  readonly names: ReadonlyMap<string, Formula>;
  readonly units: readonly UnitUse[];
  /** How many persons can ride, with the driver, where the layout says so. */
  readonly seats?: Formula;
  /** How many ride by its choices, with the driver, where the layout says so. */
  readonly persons?: Formula;
  /** How many persons can sleep in it, where the layout says so. */
  readonly sleepingPlaces?: Formula;
  readonly cautions?: readonly CautionUse[];
  readonly musts: readonly { readonly that: Formula; readonly says: string; readonly place: Place }[];
}

export interface Library {
  readonly id: string;
  readonly title: string;
  /** Says whether the figures are invented. */
  readonly note: string;
  readonly currency: string;
  /** Roles an order must give a board and finish for, with what each is for. */
  readonly roles: ReadonlyMap<string, string>;
  /** What a level panel of a role bears, in kg per m², where the panel itself does not say; by role. */
  readonly loadsKgPerM2?: ReadonlyMap<string, number>;
  /** Cautions of the library's own, by id; under an id of the program they are added to its words. */
  readonly cautions?: ReadonlyMap<string, CautionText>;
  readonly boards: ReadonlyMap<string, Board>;
  readonly finishes: ReadonlyMap<string, Finish>;
  readonly edgings: ReadonlyMap<string, Edging>;
  readonly fittings: ReadonlyMap<string, Fitting>;
  readonly drilling: ReadonlyMap<string, DrillingPattern>;
  readonly appliances?: ReadonlyMap<string, Appliance>;
  readonly sheets: readonly SheetOffer[];
  readonly suppliers: ReadonlyMap<string, Supplier>;
  /** Days such as 2026-12-25 on which nobody works or delivers, beside Saturdays and Sundays. */
  readonly freeDays: ReadonlySet<string>;
  readonly saws: ReadonlyMap<string, Saw>;
  readonly vehicles: ReadonlyMap<string, Vehicle>;
  /** What an estimate reckons with; absent where the library has none. */
  readonly rates?: Rates;
  readonly units: ReadonlyMap<string, UnitDefinition>;
  readonly layouts: ReadonlyMap<string, LayoutDefinition>;
}
