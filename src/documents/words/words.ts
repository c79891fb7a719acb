import type { DrawingWords } from '../../drawing/index.ts';
import type { PlanStep } from '../../model/plan.ts';
import type { CutGuide } from '../../model/stock.ts';
import type { AssemblyWords } from './assemblyWords.ts';
import type { CautionWords } from './cautionWords.ts';
import type { CompareWords } from './compareWords.ts';
import type { LaterWords } from './laterWords.ts';
import type { MassWords } from './massWords.ts';
import type { PurchaseWords } from './purchaseWords.ts';
import type { QuoteWords } from './quoteWords.ts';
import type { StickerWords } from './stickerWords.ts';

export type TrimSide = Extract<PlanStep, { cut: 'trim' }>['side'];
export type PartingCut = Exclude<PlanStep['cut'], 'trim'>;
export type EdgeWord = 'length1' | 'length2' | 'width1' | 'width2';

/** Languages the job book can be written in. */
export type Language = 'en' | 'de';

/**
 * Every word of the job book. A language is one value of this type; nothing else of the book has words of its own.
 * Lengths come in as printed.
 */
export interface Words {
  /** BCP 47 tag for the page. */
  readonly language: Language;
  readonly drawings: DrawingWords;
  readonly book: string;
  readonly contents: string;
  readonly pageOf: (page: number, pages: number) => string;
  readonly workshopLine: string;
  readonly steps: {
    readonly whole: string;
    readonly trim: (piece: string, side: TrimSide, take: string, leaves: string) => string;
    readonly part: (
      piece: string,
      setting: string,
      cut: PartingCut,
      blade: 'length' | 'width',
      gives: readonly string[],
      guide: CutGuide,
      /** What comes off where that is less than the blade is wide; null for a whole cut. */
      shaved: string | null,
    ) => string;
    readonly panel: (piece: string, number: number, name: string, size: string) => string;
    readonly offcut: (piece: string, size: string) => string;
    readonly waste: (piece: string, size: string) => string;
    /** What a narrow cut asks for, by what guides it. */
    readonly narrow: Readonly<Record<CutGuide, string>>;
    /** At the foot of steps that go on further left on the page, and over the first of them there. */
    readonly goesOn: (step: string) => string;
    readonly goesOnHere: (step: string) => string;
  };
  readonly title: {
    readonly heading: string;
    readonly note: string;
    readonly vehicle: string;
    readonly room: string;
    readonly count: string;
    readonly units: string;
    readonly saw: string;
    readonly roles: string;
    readonly rolesColumns: readonly string[];
    readonly raw: string;
    readonly totals: string;
    readonly totalsColumns: readonly string[];
    /** Work at the saw, with equal sheets on each other. */
    readonly sawing: string;
    readonly sawingColumns: (guides: readonly CutGuide[]) => readonly string[];
    readonly squareMetres: (area: string) => string;
    readonly kilograms: (mass: string) => string;
    readonly all: string;
    readonly metres: (metres: string) => string;
  };
  readonly cautions: CautionWords;
  readonly mass: MassWords;
  readonly layout: { readonly heading: string };
  readonly cuttingList: {
    readonly heading: string;
    readonly intro: string;
    /** What fractions of an inch hold, after the intro. */
    readonly inches: (finest: number, mostOff: string) => string;
    readonly columns: readonly string[];
    readonly grain: string;
    readonly none: string;
    readonly doneOf: (count: number) => string;
  };
  readonly plans: {
    readonly heading: string;
    readonly plan: (number: number, of: number, group: string) => string;
    readonly alike: (copies: number) => string;
    /** How sheets in stacks are sawn: `3` or `2 × 3 + 2` sheets, and the other cut plans whose sheets lie in them. */
    readonly stacked: (sheets: string, plans: readonly number[]) => string;
    readonly stackSteps: (sheets: string) => string;
    readonly otherName: (piece: string, here: string, plans: readonly number[], there: string) => string;
    readonly facts: (stock: string, size: string, kerf: string, guide: CutGuide) => string;
    /** What a piece is whose name ends in a plus: all from the piece named on. */
    readonly rest: (name: string) => string;
    /** What a piece is that is called after the first and the last of those that it still holds. */
    readonly span: (first: string, last: string) => string;
    readonly steps: string;
    readonly pieces: string;
    readonly tick: (number: number, name: string, size: string) => string;
    readonly copy: (copy: number) => string;
  };
  readonly edging: {
    readonly heading: string;
    readonly intro: string;
    readonly none: string;
    readonly pass: (pass: 1 | 2, edging: string) => string;
    readonly columns: readonly string[];
    readonly edge: (edge: EdgeWord) => string;
    /** An edge of a panel of a unit, with the side it is on there. */
    readonly edgeOn: (edge: string, side: string) => string;
    readonly need: string;
    readonly needColumns: readonly string[];
  };
  readonly cutOuts: {
    readonly heading: string;
    readonly intro: string;
    readonly none: string;
    readonly columns: readonly string[];
    readonly fromTo: (from: string, to: string) => string;
    /** How a panel lies for it, by sides of its unit: which face is up, from which edges is measured along its length and across. */
    readonly lies: (up: string, along: string, across: string) => string;
  };
  readonly units: {
    readonly heading: string;
    readonly outside: (x: string, y: string, z: string) => string;
    readonly panels: string;
    readonly panelColumns: readonly string[];
    readonly into: (name: string, depth: string) => string;
    readonly fittings: string;
    readonly fittingColumns: readonly string[];
    readonly noFittings: string;
    readonly assembly: AssemblyWords;
    readonly mass: (kg: string) => string;
  };
  readonly fittings: {
    readonly heading: string;
    /** How many vehicles or rooms are made alike. */
    readonly intro: (alike: number) => string;
    readonly columns: readonly string[];
    readonly packs: (packs: number, pack: number) => string;
    readonly unit: (unit: string, count: number) => string;
  };
  readonly appliances: {
    readonly heading: string;
    readonly intro: string;
    /** Appliance, count, width × depth × height, mass of one, units, in hand. */
    readonly columns: readonly string[];
  };
  readonly offcuts: {
    readonly byHand: (panel: string) => string;
    readonly heading: string;
    readonly intro: string;
    readonly none: string;
    readonly columns: readonly string[];
    readonly grain: { readonly length: string; readonly width: string; readonly none: string };
  };
  readonly stickers: StickerWords;
  readonly purchase: PurchaseWords;
  readonly quote: QuoteWords;
  readonly compare: CompareWords;
  readonly later: LaterWords;
  readonly last: { readonly heading: string; readonly items: readonly string[] };
  /** What only the page on a screen says. */
  readonly page: {
    readonly skip: string;
    readonly find: string;
    readonly findHint: string;
    readonly found: (count: number) => string;
    readonly dark: string;
    readonly light: string;
    readonly print: string;
    readonly zoomIn: string;
    readonly zoomOut: string;
    readonly fit: string;
    readonly planRegion: (plan: string) => string;
    readonly ticked: (done: number, all: number) => string;
    readonly ticksStay: string;
    readonly noTicksKept: string;
    readonly clear: string;
    readonly reallyClear: string;
    readonly tapPlan: string;
  };
}
