import { STILL_SIZES, type StillSizeName } from '@pullbook/charts';
import { type Remark, remark } from '@pullbook/core/remark';
import { timedClip } from './clip.ts';
import { publishedName } from './file-names.ts';
import type { FormatOf } from './model.ts';
import type { Making, Piece } from './piece.ts';

/** The clip in every size and format asked for; numbered pictures where no film can be made here and none was asked for. */
export async function clipPieces(making: Making, remarks: Remark[]): Promise<Piece[]> {
  const { answer, options, signature, request, stem, signal, onProgress } = making;
  const { findEncoder, makeClip } = await import('@pullbook/publish');
  const { fps, theme, ground, sizes } = request;
  const clip = timedClip(answer, options, signature, request);
  const formats = await formatsToMake();
  return clipSizes(sizes).flatMap((sizeName) =>
    formats.map((format): Piece => {
      const { width, height } = STILL_SIZES[sizeName];
      const size = { width, height, theme, ground };
      const parts = [`${width}x${height}`, `${fps}fps`, theme, ground ? '' : 'transparent'];
      return {
        kind: 'clip',
        name: publishedName(
          stem,
          [...parts, format === 'png' ? 'pictures' : ''],
          format === 'png' ? '' : format,
        ),
        make: async (path) => {
          const made = await makeClip({
            clip,
            size,
            fps,
            format,
            path,
            ...(signal && { signal }),
            onProgress: (share: number) => onProgress?.(`clip ${width} x ${height} ${format}`, share),
          });
          if (!made.ok) return { trouble: made.remarks[0]! };
          return { width, height, seconds: made.value.seconds, remarks: made.remarks };
        },
      };
    }),
  );

  async function formatsToMake(): Promise<readonly FormatOf<'clip'>[]> {
    if (request.clipFormatSaid) return request.formats.clip;
    const here = (await findEncoder())?.formats ?? [];
    const [usual] = (ground ? OPAQUE : CLEAR).filter((format) => here.includes(format));
    if (usual !== undefined) return [usual];
    const message =
      'This machine has no program that makes films (ffmpeg), so the clip is a folder of numbered pictures; a video editor takes it as it is. Install ffmpeg for a file that runs by itself.';
    remarks.push(remark('note', 'no-encoder', message));
    return ['png'];
  }
}

/** Usual formats of a clip with a ground, and of one to lay over a film: not all can be transparent. */
const OPAQUE = ['mp4', 'webm', 'mov'] as const;
const CLEAR = ['mov', 'webm'] as const;

/** A clip is no thumbnail. */
function clipSizes(sizes: readonly StillSizeName[]): readonly StillSizeName[] {
  const films = sizes.filter((size) => size !== 'thumbnail');
  return films.length > 0 ? films : ['1080p'];
}
