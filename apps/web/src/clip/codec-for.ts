import { canEncodeVideo, Quality, type VideoCodec } from 'mediabunny';
import type { ClipFrames } from './clip-choice.ts';

/** Lines and letters show every fault of a film, so the figure is high; what stands still costs next to nothing. */
export const CLIP_QUALITY = new Quality('high');

export const alphaOf = ({ ground }: ClipFrames): 'discard' | 'keep' => (ground ? 'discard' : 'keep');

/** In the order of how many players and editors take them. */
const CODECS: Record<'mp4' | 'webm', readonly VideoCodec[]> = {
  mp4: ['avc', 'vp9', 'av1'],
  webm: ['vp9', 'av1'],
};

/** How this browser can encode it; `null`: not at all. */
export async function codecFor(frames: ClipFrames): Promise<VideoCodec | null> {
  if (frames.format === 'png' || typeof VideoEncoder === 'undefined') return null;
  // Only VP9 carries transparency in a WebM that others read.
  const codecs: readonly VideoCodec[] = frames.ground ? CODECS[frames.format] : ['vp9'];
  for (const codec of codecs) {
    const can = await canEncodeVideo(codec, {
      width: frames.width,
      height: frames.height,
      frameRate: frames.framesPerSecond,
      quality: CLIP_QUALITY,
      alpha: alphaOf(frames),
    });
    if (can) return codec;
  }
  return null;
}
