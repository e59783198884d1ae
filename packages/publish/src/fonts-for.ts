import { FONT_FILES } from '@pullbook/charts';
import { fontPaths } from './font-folder.ts';

/** The rasteriser's fonts: the shipped ones, and the machine's only where those lack signs of a picture. */
export const fontsFor = (missingSigns: readonly string[]) => ({
  loadSystemFonts: missingSigns.length > 0,
  fontFiles: fontPaths(),
  defaultFontFamily: FONT_FILES.sans.family,
});
