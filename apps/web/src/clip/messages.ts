import type { ClipDescription } from '@pullbook/charts';
import type { ClipFrames } from './clip-choice.ts';

/** What the page gives its worker: one clip, then the worker ends. */
export interface ClipOrder {
  clip: ClipDescription;
  frames: ClipFrames;
  /** The shop's mark, decoded. */
  pictures: Map<string, ImageBitmap>;
  /** Name of the file in the place that the browser keeps for the page. */
  file: string;
}

export type ClipNews =
  | { kind: 'progress'; done: number; of: number }
  | { kind: 'made'; frames: number; sha256: string }
  | { kind: 'trouble'; message: string; isFull: boolean };
