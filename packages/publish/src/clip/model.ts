import type { ClipDescription, StillSize } from '@pullbook/charts';

/**
 * Kinds of clip. `mp4` (H.264) plays everywhere and has no alpha; `webm` (VP9) and `mov` can be laid over a film;
 * `png` is a folder of numbered pictures and needs no encoder.
 */
export const CLIP_FORMATS = ['mp4', 'webm', 'mov', 'png'] as const;
export type ClipFormat = (typeof CLIP_FORMATS)[number];

/** Frames a second that clips are made at. */
export const CLIP_RATES = [30, 60] as const;
export type ClipRate = (typeof CLIP_RATES)[number];

/** What clip is to be made, how, and where it is to stand. */
export interface ClipToMake {
  clip: ClipDescription;
  /** `ground: false`: transparent where nothing is drawn. */
  size: StillSize;
  fps: ClipRate;
  format: ClipFormat;
  /** The file; for `png` the folder. Nothing stands there yet: who gives it its name puts it in its place when it is whole. */
  path: string;
  /** Ends it: then nothing of it is left, and the promise fails with the signal's reason. */
  signal?: AbortSignal | undefined;
  /** Share of the frames that are done, 0 to 1. */
  onProgress?: ((share: number) => void) | undefined;
}

/** The file, or folder of pictures, as it came out. */
export interface MadeClip {
  path: string;
  width: number;
  height: number;
  seconds: number;
  bytes: number;
  frames: number;
}
