import { facesReady } from '../canvas/faces.ts';
import { clipFile } from './clip-file.ts';
import { FramePainter } from './frame-painter.ts';
import { hashOf } from './hash-of.ts';
import type { ClipNews, ClipOrder } from './messages.ts';
import { writePictures } from './write-pictures.ts';
import { writeVideo } from './write-video.ts';

/** Not more often than this, ms: who waits reads no faster. */
const NEWS_EVERY = 100;

/** What of a worker's surroundings is used here; the page's types know only a page's. */
const here = globalThis as unknown as {
  postMessage: (news: ClipNews) => void;
  onmessage: ((event: MessageEvent<ClipOrder>) => void) | null;
  fonts: FontFaceSet;
};

async function make({ clip, frames, pictures, file }: ClipOrder): Promise<void> {
  await facesReady(here.fonts, false);
  const painter = new FramePainter(clip, frames, pictures);
  const handle = await clipFile(file);
  const writable = await handle.createWritable();
  let told = 0;
  const onFrame = (done: number) => {
    const now = performance.now();
    if (now - told < NEWS_EVERY && done < painter.count) return;
    told = now;
    here.postMessage({ kind: 'progress', done, of: painter.count });
  };
  if (frames.format === 'png') await writePictures(painter, writable, onFrame);
  else await writeVideo(painter, frames, writable, onFrame);
  const sha256 = await hashOf(await handle.getFile());
  here.postMessage({ kind: 'made', frames: painter.count, sha256 });
}

here.onmessage = (event) => {
  make(event.data).catch((reason: unknown) =>
    here.postMessage({
      kind: 'trouble',
      message: reason instanceof Error ? reason.message : String(reason),
      isFull: reason instanceof DOMException && reason.name === 'QuotaExceededError',
    }),
  );
};
