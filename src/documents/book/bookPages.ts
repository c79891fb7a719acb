import type { Drawing, PageSize, TextMeasurer } from '../../drawing/index.ts';
import { Sketch } from '../../drawing/sketch.ts';
import type { Book, DrawingsBlock, Section, TextBlock } from './book.ts';
import {
  BESIDE_SIZES,
  CLOSE_BESIDE_SIZES,
  CLOSE_ROWS,
  CLOSE_SIZES,
  CLOSEST_ROWS,
  CLOSEST_SIZES,
  Flow,
  LARGER_SIZES,
  NoRoom,
  noMore,
  PAGE_SIZES,
  type Place,
  type Room,
  type Sizes,
  SMALLEST_SIZES,
} from './flow.ts';
import { layBlock } from './layBlock.ts';
import { LYING, MARGIN, type Paper, printed, UPRIGHT } from './paper.ts';

/** How the book's name stands on the first page. */
const TITLE_MM = 8;

/** Texts that take a smaller share of a page's height than this are better laid with others. */
const SHORT = 0.3;

/** A last page of lists that is filled less than this is spared by closer rows, where these are enough. */
const NEARLY_EMPTY = 0.4;

/** Lowest rest of a room in which a further group may begin. */
const LEAST_ROOM_MM = 20;

/** Texts laid beside drawings, one sketch for each of these, and the groups of them that found no room there. */
interface Beside {
  readonly sketches: readonly Sketch[];
  readonly left: readonly (readonly TextBlock[])[];
}

/** A text of the pages that are being filled, and the chapter it belongs to. */
interface Item {
  readonly chapter: string;
  /** What is laid before the block: the heading of a chapter, at the foot of a page only with much of it below. */
  readonly opens: 'cover' | 'first chapter' | 'chapter' | 'nothing';
  readonly block: TextBlock | null;
}

/** Lays the chapters of a book onto pages. */
class Pages {
  readonly papers: Paper[] = [];
  private readonly book: Book;
  private readonly page: PageSize;
  private readonly measure: TextMeasurer;
  /** Texts since the last drawing or the last chapter that starts a page: they are laid together. */
  private items: Item[] = [];
  private chapter: string;

  constructor(book: Book, page: PageSize, measure: TextMeasurer) {
    this.book = book;
    this.page = page;
    this.measure = measure;
    this.chapter = book.words.book;
  }

  cover(): void {
    this.items.push({ chapter: this.chapter, opens: 'cover', block: null });
  }

  section(section: Section): void {
    if (section.startsPage) this.end();
    this.chapter = section.heading;
    section.blocks.forEach((block, index) => {
      if (block.kind === 'drawings') {
        this.end();
        this.drawings(block, section);
        return;
      }
      const opens = this.items.length === 0 ? 'first chapter' : index === 0 ? 'chapter' : 'nothing';
      this.items.push({ chapter: section.heading, opens, block });
    });
  }

  /** Lays the texts that wait for it: closer where that spares a page that would hold little. */
  end(): void {
    const [first] = this.items;
    if (first === undefined) return;
    const items = this.items;
    this.items = [];
    let chosen = this.layTexts(items, PAGE_SIZES);
    if (chosen.papers.length > 1 && chosen.share < NEARLY_EMPTY) {
      const closer = [CLOSE_ROWS, CLOSEST_ROWS]
        .map((sizes) => this.layTexts(items, sizes))
        .find(({ papers }) => papers.length < chosen.papers.length);
      chosen = closer ?? chosen;
    }
    this.papers.push(...chosen.papers);
  }

  /** Pages of texts, and how much of the last one is filled. */
  private layTexts(
    items: readonly Item[],
    sizes: Sizes,
  ): { readonly papers: Paper[]; readonly share: number } {
    const papers: Paper[] = [];
    const room = roomOf(UPRIGHT);
    let { chapter } = items[0]!;
    const more = (): Place => {
      const sketch = new Sketch(this.measure);
      papers.push({ ...UPRIGHT, sketch, chapters: [chapter], drawn: null, alone: false });
      return { sketch, rooms: [room] };
    };
    const flow = new Flow(this.measure, sizes, more(), more);
    for (const item of items) {
      chapter = item.chapter;
      if (item.opens === 'cover') this.layCover(flow);
      if (item.opens === 'first chapter') flow.title(chapter);
      if (item.opens === 'chapter') {
        // A chapter that begins at the foot of a page has all of it there, or a table's worth.
        const own = items.filter((other) => other.chapter === item.chapter);
        if (!this.fitsInto(flow, own)) flow.keep(60);
        flow.title(chapter);
        const paper = papers.at(-1)!;
        const chapters = [...new Set([...paper.chapters, chapter])];
        papers[papers.length - 1] = { ...paper, chapters };
      }
      if (item.block !== null) layBlock(flow, item.block, this.book.words);
    }
    return { papers, share: (flow.y - room.y0) / (room.y1 - room.y0) };
  }

  /** Whether a chapter has room in what is left of a page. */
  private fitsInto({ rest, sizes }: Flow, items: readonly Item[]): boolean {
    return tries(() => {
      const flow = new Flow(this.measure, sizes, { sketch: new Sketch(this.measure), rooms: rest }, noMore);
      // As below other texts, a little lower.
      flow.y += 5;
      flow.title(items[0]!.chapter);
      for (const { block } of items) if (block !== null) layBlock(flow, block, this.book.words);
    });
  }

  private layCover(flow: Flow): void {
    flow.lines(this.book.title, TITLE_MM, 'bold');
    flow.lines(this.book.words.book, flow.sizes.heading);
    flow.y += 4;
  }

  /** Drawings on pages of their own, in the largest scale that leaves room for all that belongs beside them. */
  private drawings(block: DrawingsBlock, section: Section): void {
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
    if (block.pieces.length === 0 && laid.left.length > 0) {
      const closer = this.layInSizes(chosen, groups, CLOSE_BESIDE_SIZES);
      if (closer.left.length === 0) laid = closer;
    }
    const size = chosen.at(-1) ?? LYING[this.page];
    if (block.pieces.length > 0 && laid.left.length > 0 && this.isShort(size, laid.left.flat())) {
      // Rather than a page of a few lines: all of it on that page, and the drawing as large as can be.
      chosen = attempts(0) ?? [];
      laid = { sketches: [], left: groups };
    }
    chosen.forEach((drawing, index) => {
      const sketch = new Sketch(this.measure);
      sketch.shapes.push(...(laid.sketches[index]?.shapes ?? []));
      const { widthMm, heightMm } = drawing;
      const alone = index === 0 && chosen.length > 1;
      this.papers.push({ widthMm, heightMm, sketch, chapters: [this.chapter], drawn: drawing, alone });
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
    return [PAGE_SIZES, CLOSE_SIZES, CLOSEST_SIZES, ...SMALLEST_SIZES].find(fits) ?? null;
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

  /**
   * Texts on a page like the drawing's, in lettering that holds them on one page where that can be. Where it cannot, in the
   * largest that takes no page more than the smallest, so that the last page holds more than a few lines.
   */
  private onPageBeside(
    size: { widthMm: number; heightMm: number },
    section: Section,
    blocks: readonly TextBlock[],
  ): void {
    const { widthMm, heightMm } = size;
    const lay = (sizes: Sizes): readonly Sketch[] => {
      const sketches: Sketch[] = [];
      const more = (): Place => {
        const sketch = new Sketch(this.measure);
        sketches.push(sketch);
        return { sketch, rooms: [roomOf(size)] };
      };
      this.layPage(new Flow(this.measure, sizes, more(), more), section, blocks);
      return sketches;
    };
    const onOne = this.sizesForPage(size, section, blocks);
    const laid = (onOne === null ? [PAGE_SIZES, CLOSE_SIZES, ...SMALLEST_SIZES] : [onOne]).map(lay);
    const fewest = Math.min(...laid.map((sketches) => sketches.length));
    for (const sketch of laid.find((sketches) => sketches.length === fewest)!) {
      this.papers.push({ widthMm, heightMm, sketch, chapters: [this.chapter], drawn: null, alone: false });
    }
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
    const left = groups.filter((group, at) =>
      lastFirst.every((index) => {
        const onto = sketches[index]!;
        const free = rooms[index]!;
        // The first group may run on from room to room. What follows it is found more easily in one piece, and in a low room
        // its heading would stand alone.
        const high = free.filter(({ y0, y1 }) => at === 0 || y1 - y0 >= LEAST_ROOM_MM);
        const inOneRoom = at === 0 ? null : this.tryOneRoom(group, high, onto, sizes);
        const rest = inOneRoom ?? this.tryGroup(group, high, onto, sizes);
        if (rest === null) return true;
        rooms[index] = rest;
        return false;
      }),
    );
    return { sketches, left };
  }

  /** As `tryGroup`, with the whole group in the first room that holds it. */
  private tryOneRoom(
    group: readonly TextBlock[],
    rooms: readonly Room[],
    onto: Sketch,
    sizes: Sizes,
  ): readonly Room[] | null {
    for (const [index, room] of rooms.entries()) {
      const rest = this.tryGroup(group, [room], onto, sizes);
      if (rest !== null) return [...rooms.slice(0, index), ...rest, ...rooms.slice(index + 1)];
    }
    return null;
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
  pages.end();
  return printed(pages.papers, book, page, measure);
}
