import { clipSeconds } from './clip-moment.ts';
import type { ClipDescription } from './model.ts';

/** How many frames a clip has at so many a second, one at least. */
export const frameCount = (clip: ClipDescription, framesPerSecond: number): number =>
  Math.max(1, Math.round(clipSeconds(clip) * framesPerSecond));

/**
 * When a clip's frame is, counted from 0, s. The last one stands for the clip's end: it is the last step's still.
 *
 * @example drawClipFrame(clip, frameSeconds(clip, 60, 90), size)
 */
export const frameSeconds = (clip: ClipDescription, framesPerSecond: number, frame: number): number =>
  frame === frameCount(clip, framesPerSecond) - 1 ? clipSeconds(clip) : frame / framesPerSecond;

/** Name of a frame as a numbered picture, as video editors look for it, counted from 1: `frame-00001.png`. */
export const frameName = (frame: number): string => `frame-${String(frame + 1).padStart(5, '0')}.png`;
