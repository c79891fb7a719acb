/** Where the lines of a text begin. Lines end with LF, CR LF or CR, as in YAML 1.2.2, section 5.4. */
export class TextLines {
  private readonly text: string;
  /** Offset of the first character of each line; of the first line, behind a byte order mark. */
  private readonly starts: number[];

  constructor(text: string) {
    this.text = text;
    this.starts = [text.startsWith('\ufeff') ? 1 : 0];
    for (const { index, 0: end } of text.matchAll(/\r\n?|\n/g)) this.starts.push(index + end.length);
  }

  /** Line and column of the character at an offset in UTF-16 units, both from 1. */
  placeAt(offset: number): { readonly line: number; readonly column: number } {
    let low = 0;
    let high = this.starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (this.starts[middle]! <= offset) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: Math.max(0, offset - this.starts[low]!) + 1 };
  }

  /** Offset of the first character of a line, from 1; the end of the text for a line that it does not have. */
  startOf(line: number): number {
    return this.starts[line - 1] ?? this.text.length;
  }

  /** A line, from 1, without its end; empty for one that the text does not have. */
  content(line: number): string {
    return this.text.slice(this.startOf(line), this.startOf(line + 1)).replace(/[\r\n]+$/, '');
  }
}
