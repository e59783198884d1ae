import { readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { frameCount, frameSeconds } from '@pullbook/charts';
import { accepted, type Result, refused } from '@pullbook/core/remark';
import { clipTrouble, encoderTrouble } from './clip-trouble.ts';
import { framePainter } from './frame-painter.ts';
import { frameTaker } from './frame-taker.ts';
import type { ClipToMake, MadeClip } from './model.ts';

/**
 * Makes a clip as a file, or as a folder of numbered pictures. An encoder that is missing or fails is said as a remark with
 * what to do; trouble of the disk is thrown, as the system gives it. Either way, or cancelled, nothing is left behind. The same
 * clip gives the same frames; the last one is the last step's still.
 *
 * @example
 * const size = { ...STILL_SIZES['1080p'], theme: 'dark', ground: true } as const;
 * await makeClip({ clip, size, fps: 60, format: 'mp4', path: 'answer.mp4' });
 */
export async function makeClip(order: ClipToMake): Promise<Result<MadeClip>> {
  const { clip, size, fps, format, path, signal } = order;
  signal?.throwIfAborted();
  const trouble = await clipTrouble(order);
  if (trouble) return refused(trouble);
  const frames = frameCount(clip, fps);
  try {
    await makeFrames(order, frames);
    const bytes = await bytesOf(path);
    return accepted({ path, width: size.width, height: size.height, seconds: frames / fps, bytes, frames });
  } catch (caught) {
    await rm(path, { recursive: true, force: true });
    signal?.throwIfAborted();
    return refused(encoderTrouble(caught, format));
  }
}

async function makeFrames(order: ClipToMake, frames: number): Promise<void> {
  const { clip, size, fps, signal, onProgress } = order;
  const painter = framePainter(clip, size);
  const taker = await frameTaker(order);
  const stop = () => void taker.stop();
  signal?.addEventListener('abort', stop, { once: true });
  try {
    for (let frame = 0; frame < frames; frame += 1) {
      signal?.throwIfAborted();
      const isNew = await painter.paint(frameSeconds(clip, fps, frame), 1 / fps);
      await taker.take(painter.pixels, isNew);
      onProgress?.((frame + 1) / frames);
    }
    await taker.finish();
    signal?.throwIfAborted();
  } catch (caught) {
    await taker.stop();
    throw caught;
  } finally {
    signal?.removeEventListener('abort', stop);
  }
}

/** Of a file, or of all files of a folder. */
async function bytesOf(path: string): Promise<number> {
  const about = await stat(path);
  if (!about.isDirectory()) return about.size;
  const sizes = await Promise.all((await readdir(path)).map((name) => stat(join(path, name))));
  return sizes.reduce((sum, { size }) => sum + size, 0);
}
