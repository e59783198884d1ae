import { mkdir } from 'node:fs/promises';
import { ENCODER_COMMAND, encoderArguments } from './encoder.ts';
import type { ClipToMake } from './model.ts';
import { startEncoder } from './piped-frames.ts';
import { pngOf, writeFrame } from './png-frames.ts';

/** What a clip's frames go into, one after the other. */
export interface FrameTaker {
  /** The memory may be written over when this is done. `isNew`: other than the frame before. */
  take(pixels: Uint8Array, isNew: boolean): Promise<void>;
  /** After the last one: waits until all is written. */
  finish(): Promise<void>;
  /** Ends it at once; what was written is to be thrown away. */
  stop(): Promise<void>;
}

export async function frameTaker({ format, size, fps, path }: ClipToMake): Promise<FrameTaker> {
  if (format !== 'png')
    return startEncoder(ENCODER_COMMAND, encoderArguments(format, { ...size, fps }, path));
  await mkdir(path);
  let index = 0;
  let png: Uint8Array = new Uint8Array(0);
  return {
    take: async (pixels, isNew) => {
      if (isNew || index === 0) png = await pngOf(pixels, size);
      await writeFrame(path, index, png);
      index += 1;
    },
    finish: async () => undefined,
    stop: async () => undefined,
  };
}
