import { printMmShort } from '../basics/lengths.ts';
import type { PlacedUnit } from '../model/furniture.ts';
import type { TextMeasurer } from './drawing.ts';
import type { TitleField } from './page.ts';

/** What drawings of furniture need besides the furniture. */
export interface FurnitureDrawingOptions {
  readonly measure: TextMeasurer;
  /** As printed in the title block. */
  readonly job: string;
  readonly owner?: string;
  /** Words for ids of boards, finishes, fittings and units; an id without words stands for itself. */
  readonly titles: ReadonlyMap<string, string>;
}

/** Outside width × depth × height of a unit in mm. */
export function sizeWords({ outside }: PlacedUnit): string {
  return (['x', 'y', 'z'] as const)
    .map((axis) => printMmShort(outside[axis][1] - outside[axis][0]))
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
    readonly page: number;
    readonly pages: number;
  },
): TitleField[][] {
  return [
    [
      { heading: 'Workshop', content: options.owner ?? '', weight: 48 },
      { heading: 'Job', content: options.job, weight: 72 },
      { heading: 'Document', content: words.document, weight: 28 },
      { heading: 'Date', content: '', weight: 32 },
    ],
    [
      { heading: 'Of', content: words.what, weight: 70, strong: true },
      { heading: 'Kind', content: words.kind, weight: 110 },
    ],
    [
      { heading: words.sizeHeading ?? 'Width × depth × height', content: words.size, weight: 70 },
      { heading: 'Scale, sizes in mm', content: words.scale, weight: 40 },
      { heading: 'Projection', content: 'first angle', weight: 40 },
      { heading: 'Page', content: `${words.page} of ${words.pages}`, weight: 30 },
    ],
  ];
}
