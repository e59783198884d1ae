/** The few members of fontkit that are used here; the package ships no types. */
declare module 'fontkit' {
  export interface Glyph {
    id: number;
    advanceWidth: number;
  }
  export interface Font {
    familyName: string;
    unitsPerEm: number;
    /** Code points that it has. */
    characterSet: number[];
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): Glyph;
    /** Without a script it takes the text's own; a text of figures alone has none. */
    layout(
      text: string,
      features?: string[],
      script?: string,
    ): {
      glyphs: Glyph[];
      advanceWidth: number;
      bbox: { minX: number; maxX: number; minY: number; maxY: number };
    };
  }
  export function openSync(path: string): Font;
}
