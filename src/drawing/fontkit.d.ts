/** The part of fontkit that measures text; the package brings no types. */
declare module 'fontkit' {
  export interface Glyph {
    readonly id: number;
    readonly advanceWidth: number;
    readonly codePoints: readonly number[];
  }
  export interface GlyphRun {
    readonly glyphs: readonly Glyph[];
    readonly positions: readonly { readonly xAdvance: number }[];
    readonly advanceWidth: number;
  }
  export interface Font {
    readonly unitsPerEm: number;
    layout(text: string): GlyphRun;
  }
  export function create(bytes: Uint8Array): Font;
}
