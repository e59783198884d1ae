import type { DrawSize, ThemeName } from '@pullbook/charts';

/** How big a compressor map is drawn in a column of this width: never higher than a screen shows at once. */
export function mapSize(width: number, theme: ThemeName): DrawSize {
  const height = Math.round(Math.max(340, Math.min(560, width * 0.82)));
  return { width, height, text: 13, theme, ground: false };
}

/** As big as fits beside the words that say the same. */
export const smallMapSize = (width: number, theme: ThemeName): DrawSize => ({
  width,
  height: Math.round(Math.max(180, Math.min(240, width * 0.7))),
  text: 12,
  theme,
  ground: false,
});
