import { execFile } from 'node:child_process';
import { promisify } from 'node:util';
import type { ClipFormat, ClipRate } from './model.ts';

/** A program of the person's own that makes video files of frames; it is run, never shipped. */
export interface Encoder {
  /** `5.1.9` */
  version: string;
  /** What it can make here; `png` needs none. */
  formats: ClipFormat[];
}

/** By its name: the system looks for it where it looks for all programs. */
export const ENCODER_COMMAND = 'ffmpeg';
const LIBRARIES = { mp4: 'libx264', webm: 'libvpx-vp9', mov: 'prores_aw' } as const;

/** ms; a program that says nothing of itself for so long is none that can be worked with. */
const PATIENCE = 20_000;

const run = promisify(execFile);

/** The video encoder on this machine; `null`: there is none. */
export async function findEncoder(): Promise<Encoder | null> {
  try {
    const told = (what: string) => run(ENCODER_COMMAND, ['-hide_banner', what], { timeout: PATIENCE });
    const [{ stdout: about }, { stdout: list }] = await Promise.all([told('-version'), told('-encoders')]);
    const formats = (Object.keys(LIBRARIES) as (keyof typeof LIBRARIES)[]).filter((format) =>
      new RegExp(`^ V\\S* ${LIBRARIES[format]} `, 'mu').test(list),
    );
    return { version: /version (\S+)/u.exec(about)?.[1] ?? '', formats };
  } catch {
    return null;
  }
}

interface Frames {
  width: number;
  height: number;
  fps: ClipRate;
  ground: boolean;
}

/**
 * What to tell the encoder: frames come in as plain RGBA; the file says nothing of when and by what it was made, so that the
 * same clip is the same file. Colours are those of ITU-R BT.709, as players take them of a picture this large.
 */
export function encoderArguments(format: Exclude<ClipFormat, 'png'>, frames: Frames, path: string): string[] {
  const { width, height, fps, ground } = frames;
  const input = ['-f', 'rawvideo', '-pixel_format', 'rgba', '-video_size', `${width}x${height}`];
  return [
    ...['-hide_banner', '-nostats', '-loglevel', 'error', '-y'],
    ...[...input, '-framerate', String(fps), '-i', 'pipe:0'],
    ...['-an', '-vf', `scale=out_color_matrix=bt709:out_range=tv,format=${pixelFormat(format, ground)}`],
    ...['-colorspace', 'bt709', '-color_primaries', 'bt709', '-color_trc', 'bt709', '-color_range', 'tv'],
    ...coded(format, ground),
    ...['-map_metadata', '-1', '-fflags', '+bitexact', '-flags:v', '+bitexact'],
    ...['-f', format, path],
  ];
}

function pixelFormat(format: Exclude<ClipFormat, 'png'>, ground: boolean): string {
  if (format === 'mov') return ground ? 'yuv422p10le' : 'yuva444p10le';
  return ground ? 'yuv420p' : 'yuva420p';
}

/** Sharp letters at a speed that two cores keep up with. */
function coded(format: Exclude<ClipFormat, 'png'>, ground: boolean): string[] {
  switch (format) {
    case 'mp4':
      return '-c:v libx264 -preset veryfast -crf 16 -movflags +faststart'.split(' ');
    case 'webm':
      // What is empty must be empty: coarser steps would leave a veil of one part in 255 over the whole film.
      return `-c:v libvpx-vp9 -b:v 0 -crf ${ground ? 20 : 10} -deadline realtime -cpu-used 8 -row-mt 1 -tile-columns 2 -auto-alt-ref 0`.split(
        ' ',
      );
    case 'mov':
      // ProRes 422 HQ, and 4444 with alpha. The other encoder of it takes ten times as long; this one does not say its colours itself.
      return [
        ...['-c:v', 'prores_aw', '-profile:v', ground ? '3' : '4'],
        ...['-bsf:v', 'prores_metadata=color_primaries=bt709:color_trc=bt709:colorspace=bt709'],
      ];
  }
}
