import type { Drawing, PageSize, TextMeasurer } from '../../drawing/index.ts';
import { Sketch } from '../../drawing/sketch.ts';
import type { Book, DrawingsBlock, Section, TextBlock } from './book.ts';
import {
  BESIDE_SIZES,
  CLOSE_SIZES,
  CLOSEST_SIZES,
  Flow,
  LARGER_SIZES,
  NoRoom,
  noMore,
  PAGE_SIZES,
  type Place,
  type Room,
  type Sizes,
} from './flow.ts';
import { layBlock } from './layBlock.ts';
import { LYING, MARGIN, type Paper, printed, UPRIGHT } from './paper.ts';

/** How the book's name stands on the first page. */
const TITLE_MM = 8;

/** Texts that take a smaller share of a page's height than this are better laid with others. */
const SHORT = 0.3;

/** Texts laid beside drawings, one sketch for each of these, and the groups of them that found no room there. */
interface Beside {
  readonly sketches: readonly Sketch[];
  readonly left: readonly (readonly TextBlock[])[];
}

/** Lays the chapters of a book onto pages. */
class Pages {
  readonly papers: Paper[] = [];
  private readonly book: Book;
  private readonly page: PageSize;
  private readonly measure: TextMeasurer;
  /** Texts of the page begun last, when it is one of texts. */
  private flow: Flow | null = null;
  private chapter: string;

  constructor(book: Book, page: PageSize, measure: TextMeasurer) {
    this.book = book;
    this.page = page;
    this.measure = measure;
    this.chapter = book.words.book;
  }

  private newPaper(
    size: { widthMm: number; heightMm: number },
    drawn: Drawing | null,
    alone: boolean,
  ): Sketch {
    const sketch = new Sketch(this.measure);
    this.papers.push({ ...size, sketch, chapters: [this.chapter], drawn, alone });
    return sketch;
  }

  /** An empty page with one room. */
  private newPlace(size: { widthMm: number; heightMm: number }): Place {
    const sketch = this.newPaper(size, null, false);
    return { sketch, rooms: [roomOf(size)] };
  }

  private openFlow(size: { widthMm: number; heightMm: number }): Flow {
    const more = () => this.newPlace(size);
    return new Flow(this.measure, PAGE_SIZES, more(), more);
  }

  cover(): void {
    this.flow = this.openFlow(UPRIGHT);
    this.flow.lines(this.book.title, TITLE_MM, 'bold');
    this.flow.lines(this.book.words.book, PAGE_SIZES.heading);
    this.flow.y += 4;
  }

  section(section: Section): void {
    this.chapter = section.heading;
    if (section.startsPage) this.flow = null;
    section.blocks.forEach((block, index) => {
      if (block.kind === 'drawings') {
        this.drawings(block, section);
        return;
      }
      if (this.flow === null) {
        this.flow = this.openFlow(UPRIGHT);
        this.flow.title(section.heading);
      } else if (index === 0) {
        // A chapter that begins at the foot of a page has a table's worth of it there.
        this.flow.keep(60);
        this.flow.title(section.heading);
        this.alsoOnThisPage(section.heading);
      }
      layBlock(this.flow, block, this.book.words);
    });
  }

  /** A chapter that has begun on the page begun last. */
  private alsoOnThisPage(chapter: string): void {
    const paper = this.papers.pop();
    if (paper !== undefined) this.papers.push({ ...paper, chapters: [...paper.chapters, chapter] });
  }

  /** Drawings on pages of their own, in the largest scale that leaves room for all that belongs beside them. */
  private drawings(block: DrawingsBlock, section: Section): void {
    this.flow = null;
    const groups = block.beside ?? [];
    const attempts = block.onPaper ?? ((smaller: number) => (smaller === 0 ? block.drawings : null));
    let chosen = attempts(0) ?? [];
    let laid = this.layBeside(chosen, groups);
    const isTooMuch = laid.left.length > 0 && !this.fitsOnPage(chosen.at(-1), section, laid.left.flat());
    for (let smaller = 1; laid.left.length > 0; smaller++) {
      const drawings = attempts(smaller);
      if (drawings === null) break;
      const tried = this.layBeside(drawings, groups);
      // A smaller drawing that does not spare the page after it is worth it only where that page would not be enough.
      if (tried.left.length > 0 && !(isTooMuch && tried.left.length < laid.left.length)) continue;
      chosen = drawings;
      laid = tried;
    }
    const size = chosen.at(-1) ?? LYING[this.page];
    if (block.pieces.length > 0 && laid.left.length > 0 && this.isShort(size, laid.left.flat())) {
      // Rather than a page of a few lines: all of it on that page, and the drawing as large as can be.
      chosen = attempts(0) ?? [];
      laid = { sketches: [], left: groups };
    }
    chosen.forEach((drawing, index) => {
      const sketch = this.newPaper(drawing, drawing, index === 0 && chosen.length > 1);
      sketch.shapes.push(...(laid.sketches[index]?.shapes ?? []));
    });
    if (laid.left.length > 0) this.onPageBeside(size, section, laid.left.flat());
  }

  /** Whether texts would leave most of a page empty. */
  private isShort(size: { widthMm: number; heightMm: number }, blocks: readonly TextBlock[]): boolean {
    const room = roomOf(size);
    let usedMm = Number.POSITIVE_INFINITY;
    tries(() => {
      const place = { sketch: new Sketch(this.measure), rooms: [room] };
      const flow = new Flow(this.measure, PAGE_SIZES, place, noMore);
      for (const block of blocks) layBlock(flow, block, this.book.words);
      usedMm = flow.y - room.y0;
    });
    return usedMm < SHORT * (room.y1 - room.y0);
  }

  /** The largest lettering in which texts fit on one page like a drawing's; null where none does. */
  private sizesForPage(
    size: { widthMm: number; heightMm: number },
    section: Section,
    blocks: readonly TextBlock[],
  ): Sizes | null {
    const fits = (sizes: Sizes) => {
      const place = { sketch: new Sketch(this.measure), rooms: [roomOf(size)] };
      return tries(() => this.layPage(new Flow(this.measure, sizes, place, noMore), section, blocks));
    };
    return [PAGE_SIZES, CLOSE_SIZES, CLOSEST_SIZES].find(fits) ?? null;
  }

  private fitsOnPage(
    size: { widthMm: number; heightMm: number } | undefined,
    section: Section,
    blocks: readonly TextBlock[],
  ): boolean {
    return size === undefined || this.sizesForPage(size, section, blocks) !== null;
  }

  private layPage(flow: Flow, section: Section, blocks: readonly TextBlock[]): void {
    flow.title(section.heading);
    for (const block of blocks) layBlock(flow, block, this.book.words);
  }

  /** Texts on a page like the drawing's, in lettering that holds them on one page where that can be. */
  private onPageBeside(
    size: { widthMm: number; heightMm: number },
    section: Section,
    blocks: readonly TextBlock[],
  ): void {
    const sizes = this.sizesForPage(size, section, blocks) ?? CLOSE_SIZES;
    const more = () => this.newPlace({ widthMm: size.widthMm, heightMm: size.heightMm });
    this.layPage(new Flow(this.measure, sizes, more(), more), section, blocks);
  }

  /** Lays groups into the free room of the last drawing, or of one before it, in larger letters where all fit so, and says which do not fit. */
  private layBeside(drawings: readonly Drawing[], groups: readonly (readonly TextBlock[])[]): Beside {
    const large = this.layInSizes(drawings, groups, LARGER_SIZES);
    return large.left.length === 0 ? large : this.layInSizes(drawings, groups, BESIDE_SIZES);
  }

  private layInSizes(
    drawings: readonly Drawing[],
    groups: readonly (readonly TextBlock[])[],
    sizes: Sizes,
  ): Beside {
    const sketches = drawings.map(() => new Sketch(this.measure));
    const rooms = drawings.map(({ free }): readonly Room[] => free ?? []);
    const lastFirst = drawings.map((_, index) => index).reverse();
    const left = groups.filter((group) =>
      lastFirst.every((index) => {
        const rest = this.tryGroup(group, rooms[index]!, sketches[index]!, sizes);
        if (rest === null) return true;
        rooms[index] = rest;
        return false;
      }),
    );
    return { sketches, left };
  }

  /** The room left when a group is laid, or null where it does not fit whole. */
  private tryGroup(
    group: readonly TextBlock[],
    rooms: readonly Room[],
    onto: Sketch,
    sizes: Sizes,
  ): readonly Room[] | null {
    if (rooms.length === 0) return null;
    const sketch = new Sketch(this.measure);
    let rest: readonly Room[] = [];
    const fits = tries(() => {
      const flow = new Flow(this.measure, sizes, { sketch, rooms }, noMore);
      for (const block of group) layBlock(flow, block, this.book.words);
      rest = flow.rest;
    });
    if (!fits) return null;
    onto.shapes.push(...sketch.shapes);
    return rest;
  }
}

/** Whether there was room for something. */
function tries(lay: () => void): boolean {
  try {
    lay();
    return true;
  } catch (error) {
    if (error instanceof NoRoom) return false;
    throw error;
  }
}

function roomOf({ widthMm, heightMm }: { widthMm: number; heightMm: number }): Room {
  return { x0: MARGIN.left, y0: MARGIN.top, x1: widthMm - MARGIN.right, y1: heightMm - MARGIN.bottom };
}

/**
 * The job book as pages of paper: A4 upright for texts and lists, lying for drawings, each with the job, the chapter and
 * `page x of y` at its foot. On A3 pages of A4 lie two to a sheet, and cut plans have it to themselves. Texts are measured
 * with `measure`, break between words and never lie on each other.
 */
export function bookPages(book: Book, page: PageSize, measure: TextMeasurer): Drawing[] {
  const pages = new Pages(book, page, measure);
  pages.cover();
  for (const section of book.sections) if (section.blocks.length > 0) pages.section(section);
  return printed(pages.papers, book, page, measure);
}
