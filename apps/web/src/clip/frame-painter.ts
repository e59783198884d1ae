import {
  type ClipDescription,
  clipFrameKey,
  drawClipFrame,
  frameCount,
  frameSeconds,
} from '@pullbook/charts';
import { type Pictures, paintScene } from '../canvas/paint-scene.ts';
import type { ClipFrames } from './clip-choice.ts';

/** Paints the frames of a clip one after the other on one canvas. */
export class FramePainter {
  readonly canvas: OffscreenCanvas;
  readonly count: number;
  private readonly pen: OffscreenCanvasRenderingContext2D;
  private readonly clip: ClipDescription;
  private readonly frames: ClipFrames;
  private readonly pictures: Pictures;
  private shown: string | null = null;

  constructor(clip: ClipDescription, frames: ClipFrames, pictures: Pictures) {
    this.clip = clip;
    this.frames = frames;
    this.pictures = pictures;
    this.count = frameCount(clip, frames.framesPerSecond);
    this.canvas = new OffscreenCanvas(frames.width, frames.height);
    // Read back for every frame: a canvas kept beside the processor is read faster.
    const pen = this.canvas.getContext('2d', { willReadFrequently: true, alpha: !frames.ground });
    if (pen === null) throw new Error('The browser gives no canvas of this size.');
    this.pen = pen;
  }

  /** Puts a frame on the canvas; `false`: it is the one that stands there already. */
  paint(index: number): boolean {
    const at = frameSeconds(this.clip, this.frames.framesPerSecond, index);
    const key = clipFrameKey(this.clip, at);
    if (key === this.shown) return false;
    const { width, height, theme, ground } = this.frames;
    paintScene(
      this.pen,
      drawClipFrame(this.clip, at, { width, height, theme, ground }),
      { width, height },
      this.pictures,
    );
    this.shown = key;
    return true;
  }
}
