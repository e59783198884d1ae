/** The few members of fontkit that are used here; the package ships no types. */
declare module 'fontkit' {
  export interface Glyph {
    id: number;
    advanceWidth: number;
  }
  export interface Font {
    familyName: string;
    unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): Glyph;
    layout(text: string): { glyphs: Glyph[]; advanceWidth: number };
  }
  export function openSync(path: string): Font;
}
