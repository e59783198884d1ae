import { type Remark, remark } from '@pullbook/core/remark';
import { type Encoder, findEncoder } from './encoder.ts';
import type { ClipToMake } from './model.ts';
import { EncoderTrouble } from './piped-frames.ts';

const PICTURES = 'take --format png: a folder of numbered pictures, which every video editor opens';

/** Why a clip cannot be made as it was asked for; `null`: it can. */
export async function clipTrouble({ clip, size, format }: ClipToMake): Promise<Remark | null> {
  const { width, height, ground } = size;
  if (!clip.steps.some(({ seconds }) => seconds > 0))
    return remark(
      'refusal',
      'nothing-to-show',
      'The clip has no step that is shown for any time. Put at least one step of the running order back in, or give it its seconds.',
    );
  if (format === 'png') return null;
  if (format === 'mp4' && !ground)
    return remark(
      'refusal',
      'no-alpha-in-mp4',
      'An MP4 file has no transparency. For a clip to lay over a film take webm, mov or png; or take the clip with its ground.',
    );
  if (width % 2 !== 0 || height % 2 !== 0)
    return remark(
      'refusal',
      'odd-size',
      `A video is an even number of pixels wide and high; ${width} x ${height} is not. Take an even size, or png.`,
    );
  const encoder = await findEncoder();
  if (!encoder) return remark('refusal', 'encoder-missing', missing());
  return encoder.formats.includes(format)
    ? null
    : remark('refusal', 'encoder-missing', lacking(format, encoder));
}

const missing = () =>
  `This machine has no video encoder: no program "ffmpeg" was found. Install it (Debian and Ubuntu: sudo apt install ffmpeg) and try again, or ${PICTURES}.`;

const lacking = (format: string, { version, formats }: Encoder) =>
  `The ffmpeg on this machine (${version}) cannot make ${format}; it can make ${formats.join(', ') || 'none of the kinds known here'}. Take one of those, install a fuller ffmpeg, or ${PICTURES}.`;

/** What went wrong while the encoder worked, as a person can act on it; anything else is thrown on. */
export function encoderTrouble(caught: unknown, format: string): Remark {
  if (!(caught instanceof EncoderTrouble)) throw caught;
  const { message } = caught;
  // The encoder writes the file, so that a full disk is its trouble: told as the system's own.
  if (/no space left/iu.test(message)) throw Object.assign(new Error(message), { code: 'ENOSPC' });
  return remark(
    'refusal',
    'encoder-failed',
    `The video encoder failed at ${format}, and nothing was written. It said: “${message.split('\n').at(-1)}”. Try another kind of file, or ${PICTURES}.`,
  );
}
