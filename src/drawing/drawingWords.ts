import type { Face } from '../model/geometry.ts';
import type { CutGuide } from '../model/stock.ts';
import type { Units } from './lengthsInWords.ts';
import type { PanelWords } from './panelWords.ts';

export type SheetSide = 'left' | 'right' | 'near' | 'far';
export type CutWord = 'rip' | 'crosscut' | 'recut' | 'part';

/** Words of title blocks (ISO 7200) and of other things that all drawings have. */
export interface PageWords {
  readonly workshop: string;
  readonly job: string;
  readonly document: string;
  readonly date: string;
  readonly page: string;
  readonly scale: string;
  readonly scaleAndUnits: (units: Units) => string;
  /** `2 of 5`. */
  readonly of: (number: number, all: number) => string;
  readonly continued: (title: string) => string;
}

export interface CutPlanWords {
  readonly document: string;
  readonly overview: string;
  readonly board: string;
  /** Heading over the size of what is cut up: a sheet, or an offcut from the rack. */
  readonly stock: (kind: 'sheet' | 'offcut') => string;
  /** Over what is written on an offcut that is cut up. */
  readonly label: string;
  readonly grain: string;
  readonly grainRuns: { readonly length: string; readonly width: string; readonly none: string };
  readonly saw: string;
  readonly kerf: (kerf: string) => string;
  readonly trim: {
    readonly none: string;
    readonly all: (trim: string) => string;
    readonly each: (trims: Readonly<Record<SheetSide, string>>) => string;
  };
  /** What else the saw can do; lengths as printed. */
  readonly sawRules: {
    readonly longestCut: (length: string) => string;
    readonly smallestPart: (width: string) => string;
  };
  readonly alike: string;
  readonly sheets: (count: number) => string;
  /** Sheets that are sawn on each other; `sheets` is how many lie in each stack: `3` or `2 × 3 + 2`. */
  readonly stack: {
    readonly together: (sheets: string) => string;
    readonly withPlans: (together: string, plans: readonly number[]) => string;
    readonly through: (sheets: string) => string;
    /** Panels that are other ones on the sheets of other cut plans in the stack. */
    readonly names: {
      readonly title: string;
      readonly shortTitle: string;
      readonly columns: readonly [piece: string, here: string, others: string];
      readonly onPlans: (plans: readonly number[], panel: string) => string;
    };
  };
  readonly sides: Readonly<Record<SheetSide, string>>;
  readonly offcut: string;
  readonly waste: string;
  /** Name of a piece of the plan: those of the sheet itself are words of the plan file. */
  readonly piece: (name: string) => string;
  readonly run: (name: string, place: string) => string;
  readonly legend: {
    readonly cutNumber: string;
    readonly edged: (edging: string) => string;
    readonly anotherEdging: string;
    readonly waste: string;
    readonly offcut: string;
    readonly trim: string;
    readonly grain: string;
    readonly byHand: string;
    /** What is still in one piece, beside the name of the piece. */
    readonly restFrom: (first: string) => string;
    readonly span: (first: string, last: string) => string;
  };
  /** Common rules for circular saws, in short, after what guides them; `narrow` cuts of this sheet bear the sign. */
  readonly care: (sign: string, narrow: number, guide: CutGuide) => string;
  readonly steps: {
    /** `through`: how many sheets each cut goes through, where they lie in stacks. */
    readonly title: (lies: 'as it lies' | 'turned', through: string | null, guide: CutGuide) => string;
    readonly shortTitle: string;
    readonly columns: (
      guide: CutGuide,
    ) => readonly [number: string, cut: string, piece: string, setting: string, gives: string];
    readonly cut: Readonly<Record<CutWord, string>>;
    readonly trim: (side: SheetSide) => string;
    readonly off: (take: string) => string;
    /** Less than the blade is wide comes off. */
    readonly shaved: (take: string) => string;
  };
  /** Panels so crowded that not even their mark found a place: where they lie on the raw sheet. */
  readonly unmarked: {
    readonly title: string;
    readonly shortTitle: string;
    readonly columns: readonly [mark: string, where: string];
    readonly from: (left: string, near: string) => string;
  };
  readonly unnumbered: { readonly title: string; readonly shortTitle: string; readonly column: string };
  readonly key: {
    readonly title: string;
    readonly shortTitle: string;
    readonly columns: readonly [mark: string, panel: string, size: string, grain: string];
    readonly yes: string;
    readonly no: string;
  };
  readonly small: {
    readonly plans: string;
    readonly sheetsInAll: string;
    readonly panels: string;
    readonly countOfPanels: (count: number) => string;
    readonly countOfCuts: (count: number) => string;
    readonly countAlike: (count: number) => string;
    readonly notes: readonly [string, string];
  };
  readonly title: (number: number, all: number, group: string) => string;
  readonly description: (of: {
    readonly size: string;
    readonly copies: number;
    readonly panels: number;
    readonly offcuts: number;
    readonly cuts: number;
    readonly page: number;
    readonly pages: number;
  }) => string;
  readonly overviewTitle: (group: string) => string;
  readonly overviewDescription: (plans: number, page: number, pages: number) => string;
}

export interface FurnitureWords {
  readonly of: string;
  readonly kind: string;
  readonly outsideSize: string;
  readonly insideSize: string;
  readonly projection: string;
  readonly firstAngle: string;
  readonly isometric: string;
  readonly noScale: string;
  readonly unit: string;
  readonly panelsOfUnit: string;
  readonly layout: string;
  readonly views: { readonly front: string; readonly left: string; readonly plan: string };
  readonly hiddenLeader: string;
  readonly panels: {
    readonly title: string;
    readonly shortTitle: string;
    readonly columns: readonly [number: string, panel: string, cut: string, finished: string, board: string];
  };
  readonly opening: (name: string, size: string) => string;
  readonly fittings: { readonly title: string; readonly columns: readonly [count: string, fitting: string] };
  /** Edges of a panel by the faces of its unit: `bottom`. */
  readonly faces: Readonly<Record<Face, string>>;
  /** Corners of panels that are cut by hand along a wall. */
  readonly outlines: {
    readonly title: string;
    readonly shortTitle: string;
    readonly columns: readonly [number: string, panel: string, corner: string, along: string, across: string];
    readonly from: (panel: string, edge: string, otherEdge: string) => string;
    readonly scribing: (allowance: string, edge: string) => string;
  };
  readonly doorOpening: string;
  readonly wheelArch: string;
  /** Anything else that stands there already. */
  readonly obstacle: string;
  /** What a unit holds, such as a sink. */
  readonly appliance: string;
  readonly walkway: (width: string) => string;
  readonly hangsAbove: string;
  readonly rightWall: string;
  readonly leftWall: string;
  /** Titles of views that name the ends of a vehicle, or of a room. */
  readonly inside: Readonly<Record<'vehicle' | 'room', { readonly plan: string; readonly section: string }>>;
  readonly unitTitle: (job: string, unit: string) => string;
  readonly unitDescription: (unit: string, size: string) => string;
  readonly panelsTitle: (job: string, unit: string) => string;
  readonly panelsDescription: (unit: string, panels: number) => string;
  readonly layoutTitle: (job: string) => string;
  readonly layoutDescription: (vehicle: string, units: number) => string;
  /** Pages with all units of a library; `title` is the library's, `units` are the titles of those on the page. */
  readonly contactSheet: {
    readonly document: string;
    readonly kind: (units: number) => string;
    readonly underEach: string;
    readonly title: (library: string) => string;
    readonly description: (units: readonly string[]) => string;
  };
}

/** Every word that drawings have of their own. A language is one value of this type. */
export interface DrawingWords {
  readonly page: PageWords;
  readonly cutPlan: CutPlanWords;
  readonly furniture: FurnitureWords;
  readonly panel: PanelWords;
}
