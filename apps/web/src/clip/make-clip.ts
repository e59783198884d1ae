import type { ClipDescription } from '@pullbook/charts';
import { markPictures } from '../canvas/marks.ts';
import type { ClipFrames } from './clip-choice.ts';
import { clipFile, newClipName, removeClipFile, sweepClips } from './clip-file.ts';
import type { ClipNews, ClipOrder } from './messages.ts';

/** A clip that was made here: the file lies on disk until the window is closed. */
export interface MadeClip {
  file: File;
  frames: number;
  sha256: string;
}

/** Why there is no clip, in words for a person. */
export class ClipTrouble extends Error {
  override readonly name = 'ClipTrouble';
}

const FULL =
  'The disk has no room for the clip, or the browser gives the page no more. Free some, or take a smaller size or fewer frames a second. Nothing was kept.';

/**
 * Makes a clip beside the page, which goes on living. Cancelled by `signal` at once; nothing is left of it then.
 *
 * @example const { file } = await makeClip(clip, framesOf(choice), { signal, onProgress })
 */
export async function makeClip(
  clip: ClipDescription,
  frames: ClipFrames,
  { signal, onProgress }: { signal: AbortSignal; onProgress: (done: number, of: number) => void },
): Promise<MadeClip> {
  await sweepClips();
  const pictures = await markPictures(clip.steps.map(({ still }) => still));
  signal.throwIfAborted();
  const file = newClipName();
  const worker = new Worker(new URL('./clip-worker.ts', import.meta.url), { type: 'module' });
  try {
    const { count, sha256 } = await new Promise<{ count: number; sha256: string }>((resolve, reject) => {
      signal.addEventListener('abort', () => reject(signal.reason), { once: true });
      worker.onerror = (event) =>
        reject(
          new ClipTrouble(`The clip could not be made: ${event.message || 'its program did not arrive'}.`),
        );
      worker.onmessage = ({ data: news }: MessageEvent<ClipNews>) => {
        if (news.kind === 'progress') onProgress(news.done, news.of);
        else if (news.kind === 'made') resolve({ count: news.frames, sha256: news.sha256 });
        else reject(new ClipTrouble(news.isFull ? FULL : `The clip could not be made: ${news.message}`));
      };
      const order: ClipOrder = { clip, frames, pictures, file };
      worker.postMessage(order, [...pictures.values()]);
    });
    return { file: await (await clipFile(file)).getFile(), frames: count, sha256 };
  } catch (reason) {
    worker.terminate();
    await removeClipFile(file);
    throw reason;
  } finally {
    worker.terminate();
  }
}
