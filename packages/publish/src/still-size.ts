import type { DrawSize } from '@pullbook/charts';

/** Sizes that videos are cut in, px. */
export const STILL_SIZES = {
  '1080p': { width: 1920, height: 1080 },
  '4k': { width: 3840, height: 2160 },
} as const;

export type StillSizeName = keyof typeof STILL_SIZES;

/** How large a still is, light or dark, and whether it has a ground or lies over another picture. */
export type StillSize = Omit<DrawSize, 'text'>;
