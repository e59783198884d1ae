import { CanvasSource, Mp4OutputFormat, Output, StreamTarget, WebMOutputFormat } from 'mediabunny';
import type { ClipFrames } from './clip-choice.ts';
import { alphaOf, CLIP_QUALITY, codecFor } from './codec-for.ts';
import type { FramePainter } from './frame-painter.ts';

/** Encodes a clip into a file as it is drawn; nothing but the frame at hand stays in memory. */
export async function writeVideo(
  painter: FramePainter,
  frames: ClipFrames,
  file: FileSystemWritableFileStream,
  onFrame: (done: number) => void,
): Promise<void> {
  const codec = await codecFor(frames);
  if (codec === null) throw new Error('This browser cannot encode such a clip.');
  const source = new CanvasSource(painter.canvas, {
    codec,
    quality: CLIP_QUALITY,
    alpha: alphaOf(frames),
    keyFrameInterval: 2,
  });
  const output = new Output({
    // How many packets there will be is known, so that a player can begin before the file is whole.
    format: frames.format === 'mp4' ? new Mp4OutputFormat({ fastStart: 'reserve' }) : new WebMOutputFormat(),
    target: new StreamTarget(file, { chunked: true, chunkSize: 2 ** 20 }),
  });
  output.addVideoTrack(source, {
    frameRate: frames.framesPerSecond,
    maximumPacketCount: painter.count,
  });
  await output.start();
  for (let index = 0; index < painter.count; index += 1) {
    painter.paint(index);
    await source.add(index / frames.framesPerSecond, 1 / frames.framesPerSecond);
    onFrame(index + 1);
  }
  await output.finalize();
}
