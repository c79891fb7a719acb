import type { Drawing, TextMeasurer } from '../../drawing/index.ts';
import { drawTitleBlock, TITLE_BLOCK_WIDTH, TITLE_ROW_HEIGHT, type TitleField } from '../../drawing/page.ts';
import { Sketch } from '../../drawing/sketch.ts';
import type { TextBlock } from '../book/book.ts';
import { Flow, PAGE_SIZES, type Place } from '../book/flow.ts';
import { layBlock } from '../book/layBlock.ts';
import { UPRIGHT } from '../book/paper.ts';
import type { Words } from '../words/words.ts';

/** A paper of texts and tables, with a title block on each page. */
export interface TitledPaper {
  readonly title: string;
  readonly blocks: readonly TextBlock[];
  /** Rows of the title block of a page, from 1. */
  readonly titleRows: (page: number, pages: number) => TitleField[][];
}

const [TOP_MM, LEFT_MM, BOTTOM_MM] = [14, 20, 10] as const;
const ABOVE_TITLE_BLOCK_MM = 4;

/**
 * The pages of a paper, A4 upright: texts from the top, a title block (fields of ISO 7200) at the foot of each. Texts break
 * between words and never lie on each other.
 */
export function paperPages(paper: TitledPaper, words: Words, measure: TextMeasurer): Drawing[] {
  const { widthMm, heightMm } = UPRIGHT;
  const frame = { x0: LEFT_MM, y0: BOTTOM_MM, x1: LEFT_MM + TITLE_BLOCK_WIDTH, y1: heightMm - BOTTOM_MM };
  const rows = paper.titleRows(1, 1).length;
  const room = { ...frame, y0: TOP_MM, y1: frame.y1 - rows * TITLE_ROW_HEIGHT - ABOVE_TITLE_BLOCK_MM };
  const sketches: Sketch[] = [];
  const more = (): Place => {
    const sketch = new Sketch(measure);
    sketches.push(sketch);
    return { sketch, rooms: [room] };
  };
  const flow = new Flow(measure, PAGE_SIZES, more(), more);
  flow.title(paper.title);
  for (const block of paper.blocks) layBlock(flow, block, words);
  return sketches.map((sketch, index) => {
    drawTitleBlock(sketch, { widthMm, heightMm, frame }, paper.titleRows(index + 1, sketches.length));
    return {
      widthMm,
      heightMm,
      title: paper.title,
      description: words.pageOf(index + 1, sketches.length),
      shapes: sketch.shapes,
    };
  });
}
