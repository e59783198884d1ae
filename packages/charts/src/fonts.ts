/** The four faces that charts, stills and pages are set in. */
export type Face = 'sans' | 'sansStrong' | 'serif' | 'serifStrong';

export interface FontFile {
  family: string;
  weight: 400 | 600;
  /** Where the TTF lies: a file address in Node, an asset's address in a page. */
  url: URL;
}

/** The shipped TTFs by face. A page makes its `@font-face` rules from this list, the rasteriser gets the files. */
export const FONT_FILES: Record<Face, FontFile> = {
  sans: { family: 'Inter', weight: 400, url: new URL('../fonts/Inter-Regular.ttf', import.meta.url) },
  sansStrong: { family: 'Inter', weight: 600, url: new URL('../fonts/Inter-SemiBold.ttf', import.meta.url) },
  serif: {
    family: 'Source Serif 4',
    weight: 400,
    url: new URL('../fonts/SourceSerif4-Regular.ttf', import.meta.url),
  },
  serifStrong: {
    family: 'Source Serif 4',
    weight: 600,
    url: new URL('../fonts/SourceSerif4-SemiBold.ttf', import.meta.url),
  },
};

/** All faces. */
export const FACES = Object.keys(FONT_FILES) as Face[];

/** The face of a drawn text, by the attributes that it has; `null`: none of ours. */
export const faceOf = (attributes: Readonly<Record<string, string | number>>): Face | null =>
  FACES.find(
    (face) =>
      familyList(face) === attributes['font-family'] && FONT_FILES[face].weight === attributes['font-weight'],
  ) ?? null;

/** `font-family` as an SVG says it, with something to fall back on where the font is not installed. */
export const familyList = (face: Face): string =>
  face === 'sans' || face === 'sansStrong' ? 'Inter, Arial, sans-serif' : "'Source Serif 4', Georgia, serif";
