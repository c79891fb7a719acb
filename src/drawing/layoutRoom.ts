import type { Panel, PlacedUnit } from '../model/furniture.ts';
import type { Extent, Box as SolidBox } from '../model/geometry.ts';
import type { Finish, Vehicle } from '../model/library.ts';
import type { Stroke } from './drawing.ts';
import type { FurnitureWords } from './drawingWords.ts';
import type { ExtensionLines } from './extensionLines.ts';
import type { Units } from './lengthsInWords.ts';
import type { SeenUnits } from './narrowUnits.ts';
import type { Body } from './unitProjection.ts';

/** Of what is kept free: door openings, wheel arches, other bodies of the vehicle. */
export const DASHED: Stroke = { widthMm: 0.25, dashMm: [2.4, 1] };

export interface Standing {
  readonly unit: PlacedUnit;
  readonly number: number;
  readonly bodies: readonly { readonly panel: Panel; readonly body: Body }[];
}

/** An appliance where it stands in the vehicle. */
export interface Appliance {
  readonly title: string;
  /** What its unit calls it: shorter. */
  readonly name: string;
  readonly box: SolidBox;
}

/** What is seen in a field of a view: a panel of a unit, or an appliance, whose number is 0. */
export interface Seen {
  readonly number: number;
  readonly of?: { readonly panel: Panel; readonly unit: PlacedUnit };
  readonly appliance?: Appliance;
}

export interface Room {
  readonly vehicle: Vehicle;
  /** The widest the body is, across. */
  readonly across: Extent;
  readonly floor: Extent;
  readonly units: readonly Standing[];
  readonly appliances: readonly Appliance[];
  readonly finishes: ReadonlyMap<string, Finish>;
  readonly words: FurnitureWords;
  readonly sizes: Units;
  readonly seen: SeenUnits;
  /** Of the dimensions of all views, drawn once all figures stand. */
  readonly extensions: ExtensionLines;
}
