import type { TextMeasurer } from '../../drawing/index.ts';
import { LINE_PITCH, plainText, SMALL, WIDE, wrap } from '../../drawing/lettering.ts';
import type { Sketch } from '../../drawing/sketch.ts';

/** A rectangle of a page, in mm. */
export interface Room {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** Where texts go: rooms of one page in the order of reading. */
export interface Place {
  readonly sketch: Sketch;
  readonly rooms: readonly Room[];
}

/** Font sizes in mm and what goes with them. */
export interface Sizes {
  readonly chapter: number;
  readonly heading: number;
  readonly text: number;
  readonly table: number;
  readonly box: number;
  /** Between the rows of a table. */
  readonly row: number;
  /** Least width of a column of entries. */
  readonly column: number;
}

/** 2.9 is 8 points, the least that is read well at arm's length beside a machine. */
export const PAGE_SIZES: Sizes = {
  chapter: 5.6,
  heading: 3.9,
  text: 3.3,
  table: 2.9,
  box: 3.8,
  row: 1.7,
  column: 80,
};

/** The same letters with less between them, for lists that would else need a page for a few lines. */
export const CLOSE_ROWS: Sizes = { ...PAGE_SIZES, chapter: 5, heading: 3.6, box: 3.4, row: 1.2 };

/** As close as rows are still told apart. */
export const CLOSEST_ROWS: Sizes = { ...CLOSE_ROWS, chapter: 4.4, heading: 3.4, text: 3, box: 3.1, row: 0.8 };

/** Beside a drawing: a little more than the lettering of the drawing itself. */
export const BESIDE_SIZES: Sizes = {
  chapter: 3.6,
  heading: 3,
  text: 2.6,
  table: 2.6,
  box: 3.2,
  row: 1.1,
  column: 58,
};

/** Beside a drawing in its own lettering, before a few lines take a page of their own. */
export const CLOSE_BESIDE_SIZES: Sizes = {
  ...BESIDE_SIZES,
  heading: 2.8,
  text: SMALL,
  table: SMALL,
  box: 2.9,
  row: 0.7,
  column: 50,
};

/** Beside a drawing with much room. */
export const LARGER_SIZES: Sizes = {
  chapter: 3.9,
  heading: 3.4,
  text: 2.9,
  table: 2.9,
  box: 3.6,
  row: 1.4,
  column: 62,
};

/** On a page for steps that would else need a second one. */
export const CLOSE_SIZES: Sizes = { ...PAGE_SIZES, text: 2.9, heading: 3.4, table: 2.6, column: 58 };

/** The same with longer lines, of which fewer are broken, and all about them close. */
export const CLOSEST_SIZES: Sizes = { ...CLOSE_SIZES, chapter: 3.9, box: 3.2, column: 80 };

/** In the lettering of the drawings, before a page more is begun: few lines broken, or many columns. */
export const SMALLEST_SIZES: readonly Sizes[] = [
  { ...CLOSEST_SIZES, column: 58 },
  { ...CLOSEST_SIZES, table: SMALL },
  { ...CLOSEST_SIZES, table: SMALL, column: 58 },
];

const COLUMN_GAP = 6;
const INDENT = 7.4;
const INDENT_OF_ITEMS = 5;

/** A text of no more lines stays in one room; of a longer one so many. */
const KEPT_LINES = 4;

/** Something with a number or a box to tick before it, that is kept in one piece. */
export interface Entry {
  readonly mark: string | 'box';
  readonly lines: readonly { readonly text: string; readonly weight: 'regular' | 'bold' }[];
}

/** What is said where entries go on further left on a page, by the mark of the first of them there. */
export interface Turn {
  readonly goesOn: (mark: string) => string;
  readonly goesOnHere: (mark: string) => string;
}

/** No room is left where no further page may be begun. */
export class NoRoom extends Error {}

/** Lays texts from the top of a room down, and on into the next room or page where one is full. */
export class Flow {
  readonly sizes: Sizes;
  readonly measure: TextMeasurer;
  y: number;
  private place: Place;
  private index = 0;
  private readonly more: () => Place;

  /** `more` gives the next page; it throws `NoRoom` where there must not be one. */
  constructor(measure: TextMeasurer, sizes: Sizes, place: Place, more: () => Place) {
    this.measure = measure;
    this.sizes = sizes;
    this.place = place;
    this.more = more;
    this.y = place.rooms[0]?.y0 ?? 0;
    if (place.rooms.length === 0) this.next();
  }

  get room(): Room {
    return this.place.rooms[this.index]!;
  }

  /** Whether there is no page after this one. */
  get endsHere(): boolean {
    return this.more === noMore;
  }

  get sketch(): Sketch {
    return this.place.sketch;
  }

  get isAtTop(): boolean {
    return this.y <= this.room.y0;
  }

  /** What is left of the rooms of this page. */
  get rest(): Room[] {
    return [{ ...this.room, y0: Math.min(this.y, this.room.y1) }, ...this.place.rooms.slice(this.index + 1)];
  }

  /** Goes on in the next room. */
  next(): void {
    this.index++;
    if (this.index >= this.place.rooms.length) {
      this.place = this.more();
      this.index = 0;
    }
    this.y = this.room.y0;
  }

  fits(heightMm: number): boolean {
    return this.y + heightMm <= this.room.y1;
  }

  /** Goes on in the next room unless so much is free in this one; a room that is empty is as good as the next. */
  keep(heightMm: number): void {
    if (!this.fits(heightMm) && !this.isAtTop) this.next();
  }

  lines(text: string, sizeMm: number, weight: 'regular' | 'bold' = 'regular', indentMm = 0): void {
    let rest = plainText(text);
    while (rest !== '') {
      this.mustFit(sizeMm * LINE_PITCH);
      const width = this.room.x1 - this.room.x0 - indentMm;
      const lines = wrap(rest, width, sizeMm, weight, this.measure);
      let written = 0;
      for (const line of lines) {
        if (written > 0 && !this.fits(sizeMm * LINE_PITCH)) break;
        this.sketch.text('tables', line, this.room.x0 + indentMm, this.y + sizeMm, { sizeMm, weight });
        this.y += sizeMm * LINE_PITCH;
        written++;
      }
      rest = lines.slice(written).join(' ');
    }
  }

  title(text: string): void {
    this.keep(30);
    if (!this.isAtTop) this.y += 5;
    this.lines(text, this.sizes.chapter, 'bold');
    this.y += this.sizes.chapter * 0.4;
  }

  heading(text: string): void {
    this.keep(this.sizes.heading * 6.5);
    if (!this.isAtTop) this.y += this.sizes.heading * 0.5;
    this.lines(text, this.sizes.heading, 'bold');
    this.y += this.sizes.heading * 0.25;
  }

  /** Goes on in the next room where a text of few lines would be parted; a long one may be. */
  private keepTogether(text: string, sizeMm: number, weight: 'regular' | 'bold', indentMm: number): void {
    const width = this.room.x1 - this.room.x0 - indentMm;
    const { length } = wrap(plainText(text), width, sizeMm, weight, this.measure);
    this.keep(Math.min(length, KEPT_LINES) * sizeMm * LINE_PITCH);
  }

  paragraph(text: string, weight: 'regular' | 'bold'): void {
    this.keepTogether(text, this.sizes.text, weight, 0);
    this.lines(text, this.sizes.text, weight);
    this.y += this.sizes.text * 0.5;
  }

  list(items: readonly string[]): void {
    const { text: sizeMm } = this.sizes;
    for (const item of items) {
      this.keepTogether(item, sizeMm, 'regular', INDENT_OF_ITEMS);
      this.mustFit(sizeMm * LINE_PITCH);
      this.sketch.text('tables', '–', this.room.x0, this.y + sizeMm, { sizeMm });
      this.lines(item, sizeMm, 'regular', INDENT_OF_ITEMS);
      this.y += sizeMm * 0.36;
    }
  }

  /** A box to tick by hand. */
  box(x: number, y: number): void {
    const side = this.sizes.box;
    this.sketch.rect('tables', { x0: x, y0: y, x1: x + side, y1: y + side }, { stroke: WIDE });
  }

  /**
   * Entries in as many columns as the room is wide for, about as high as each other where they end. Where they go on in a room
   * further left on the page, `turn` says so at the end of the one and over the other.
   */
  entries(entries: readonly Entry[], turn?: Turn): void {
    let left: readonly Entry[] = entries;
    while (left.length > 0) {
      const first = left[0]!;
      this.mustFit(() => this.measured(first, this.columnsHere().width).height);
      const told = turn !== undefined && this.turnsLeft ? turn : null;
      left = this.columnsOfEntries(left, told === null ? 0 : this.sizes.table * LINE_PITCH);
      if (left.length === 0) return;
      const { mark } = left[0]!;
      if (told !== null) this.lines(told.goesOn(mark), this.sizes.table, 'bold', INDENT);
      this.next();
      if (told !== null) {
        this.lines(told.goesOnHere(mark), this.sizes.heading, 'bold');
        this.y += this.sizes.heading * 0.25;
      }
    }
  }

  /** Whether the next room is on this page and begins further left, against the order of reading. */
  private get turnsLeft(): boolean {
    const next = this.place.rooms[this.index + 1];
    return next !== undefined && next.x0 < this.room.x0;
  }

  private columnsHere(): { readonly count: number; readonly width: number } {
    const wide = this.room.x1 - this.room.x0;
    const count = Math.max(1, Math.floor((wide + COLUMN_GAP) / (this.sizes.column + COLUMN_GAP)));
    return { count, width: (wide - COLUMN_GAP * (count - 1)) / count };
  }

  /** Lays entries into the columns of this room and gives those that found no place; then so much is left below. */
  private columnsOfEntries(entries: readonly Entry[], keptMm: number): Entry[] {
    const { x0 } = this.room;
    const { count, width } = this.columnsHere();
    const measured = entries.map((entry) => this.measured(entry, width));
    const top = this.y;
    let lowest = top;
    let at = 0;
    let rest = measured.reduce((sum, { height }) => sum + height, 0);
    const y1 = this.y + rest <= this.room.y1 ? this.room.y1 : this.room.y1 - keptMm;
    for (let column = 0; column < count && at < measured.length; column++) {
      // All columns of the last room end at about the same height.
      const goal = measured.length > 3 ? rest / (count - column) : rest;
      this.y = top;
      while (at < measured.length) {
        const { height } = measured[at]!;
        const isFirst = this.y === top;
        if (!isFirst && column < count - 1 && this.y - top >= goal - height / 2) break;
        // An entry higher than an empty page is written all the same, so that nothing is lost.
        if (this.y + height > y1 && !(at === 0)) break;
        this.writeEntry(measured[at]!, x0 + column * (width + COLUMN_GAP));
        rest -= height;
        at++;
      }
      lowest = Math.max(lowest, this.y);
    }
    this.y = lowest;
    return entries.slice(at);
  }

  private measured({ mark, lines }: Entry, width: number) {
    const { table, box } = this.sizes;
    const wrapped = lines.flatMap(({ text, weight }) =>
      wrap(plainText(text), width - INDENT, table, weight, this.measure).map((line) => ({ line, weight })),
    );
    const height =
      Math.max(wrapped.length * table * LINE_PITCH, mark === 'box' ? box + 0.6 : 0) + table * 0.42;
    return { mark, wrapped, height };
  }

  private writeEntry({ mark, wrapped, height }: ReturnType<Flow['measured']>, x: number): void {
    const { table: sizeMm } = this.sizes;
    if (mark === 'box') this.box(x + 1, this.y + 0.2);
    else {
      const style = { sizeMm, weight: 'bold', anchor: 'end' } as const;
      this.sketch.text('tables', mark, x + INDENT - 1.8, this.y + sizeMm, style);
    }
    wrapped.forEach(({ line, weight }, index) => {
      const y = this.y + sizeMm * (1 + index * LINE_PITCH);
      this.sketch.text('tables', line, x + INDENT, y, { sizeMm, weight });
    });
    this.y += height;
  }

  /** Goes on where a height fits; on an empty page of its own it fits whatever it is. */
  mustFit(heightMm: number | (() => number)): void {
    const height = () => (typeof heightMm === 'number' ? heightMm : heightMm());
    while (!this.fits(height())) {
      const isLast = this.index === this.place.rooms.length - 1;
      if (this.isAtTop && isLast && !this.endsHere) return;
      this.next();
    }
  }
}

/** For texts that must stay on their page. */
export function noMore(): never {
  throw new NoRoom();
}
