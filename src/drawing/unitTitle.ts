import type { PlacedUnit } from '../model/furniture.ts';
import type { TextMeasurer } from './drawing.ts';
import type { DrawingWords } from './drawingWords.ts';
import { printLength, type Units } from './lengthsInWords.ts';
import { type PageSize, pageField, type TitleField } from './page.ts';

/** What drawings of furniture need besides the furniture. */
export interface FurnitureDrawingOptions {
  readonly measure: TextMeasurer;
  readonly words: DrawingWords;
  /** How sizes are printed; mm unless said otherwise. */
  readonly units?: Units;
  /** As printed in the title block. */
  readonly job: string;
  readonly owner?: string;
  /** Words for ids of boards, finishes, fittings and units; an id without words stands for itself. */
  readonly titles: ReadonlyMap<string, string>;
  /** Paper of the layout: A3 unless said otherwise. Units are drawn on A4. */
  readonly page?: PageSize;
  /** `left out`: no tables of panels and fittings beside the unit drawn apart; the room for them comes back as `free`. */
  readonly tables?: 'drawn' | 'left out';
  /** `left out`: the title block has no number of its page, for pages that are numbered otherwise. */
  readonly pageNumber?: 'drawn' | 'left out';
}

/** Outside width × depth × height of a unit. */
export function sizeWords({ outside }: PlacedUnit, units: Units): string {
  return (['x', 'y', 'z'] as const)
    .map((axis) => printLength(outside[axis][1] - outside[axis][0], units))
    .join(' × ');
}

/** The fields of a title block (ISO 7200) for a page about furniture. */
export function furnitureTitle(
  options: FurnitureDrawingOptions,
  words: {
    readonly document: string;
    readonly what: string;
    readonly kind: string;
    readonly sizeHeading?: string;
    readonly size: string;
    readonly scale: string;
    /** Views by the side they look at, or pictures of the whole (ISO 5456-2 and -3); the former unless said otherwise. */
    readonly projection?: 'firstAngle' | 'isometric';
    readonly page: number;
    readonly pages: number;
  },
): TitleField[][] {
  const { page, furniture } = options.words;
  return [
    [
      { heading: page.workshop, content: options.owner ?? '', weight: 48 },
      { heading: page.job, content: options.job, weight: 72 },
      { heading: page.document, content: words.document, weight: 28 },
      { heading: page.date, content: '', weight: 32 },
    ],
    [
      { heading: furniture.of, content: words.what, weight: 70, strong: true },
      { heading: furniture.kind, content: words.kind, weight: 110 },
    ],
    [
      { heading: words.sizeHeading ?? furniture.outsideSize, content: words.size, weight: 70 },
      { heading: page.scaleAndUnits(options.units ?? 'mm'), content: words.scale, weight: 40 },
      { heading: furniture.projection, content: furniture[words.projection ?? 'firstAngle'], weight: 40 },
      ...pageField(options, words.page, words.pages, 30),
    ],
  ];
}
