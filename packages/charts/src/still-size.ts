import type { DrawSize } from './model.ts';

/** Sizes that videos are cut in and phones show, px. */
export const STILL_SIZES = {
  '1080p': { width: 1920, height: 1080 },
  '4k': { width: 3840, height: 2160 },
  tall: { width: 1080, height: 1920 },
  square: { width: 1080, height: 1080 },
  thumbnail: { width: 1280, height: 720 },
} as const;

export type StillSizeName = keyof typeof STILL_SIZES;

/** How large a still is, light or dark, and whether it has a ground or lies over another picture; its text follows from that. */
export type StillSize = Omit<DrawSize, 'text'>;
