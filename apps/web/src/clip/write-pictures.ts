import { frameName } from '@pullbook/charts';
import { Zip, ZipPassThrough } from 'fflate';
import type { FramePainter } from './frame-painter.ts';

/** A zip of the usual kind ends at 4 GiB; something is left for its list of names. */
const MOST_BYTES = 2 ** 32 - 2 ** 24;
const TOO_LARGE =
  'the pictures come to more than a zip holds (4 GB). Take a smaller size or 30 frames a second, or the command line (pullbook publish TRIAL --kind clip --format png), which writes them into a folder.';

/** Writes a clip as numbered pictures in a zip, one after the other: a picture that stands longer is encoded once. */
export async function writePictures(
  painter: FramePainter,
  file: FileSystemWritableFileStream,
  onFrame: (done: number) => void,
): Promise<void> {
  let whole = 0;
  let waiting: Uint8Array<ArrayBuffer>[] = [];
  const zip = new Zip((trouble, bytes) => {
    if (trouble) throw trouble;
    waiting.push(bytes as Uint8Array<ArrayBuffer>);
  });
  const write = async () => {
    const parts = waiting;
    waiting = [];
    for (const part of parts) await file.write(part);
  };
  let picture = new Uint8Array<ArrayBuffer>(new ArrayBuffer(0));
  for (let index = 0; index < painter.count; index += 1) {
    if (painter.paint(index)) {
      const encoded = await painter.canvas.convertToBlob({ type: 'image/png' });
      picture = new Uint8Array(await encoded.arrayBuffer());
    }
    // A PNG is packed already.
    const entry = new ZipPassThrough(frameName(index));
    whole += picture.length;
    if (whole > MOST_BYTES) throw new Error(TOO_LARGE);
    zip.add(entry);
    entry.push(picture, true);
    await write();
    onFrame(index + 1);
  }
  zip.end();
  await write();
  await file.close();
}
