import { writeFile } from 'node:fs/promises';
import { STILL_SIZES, type StillSizeName } from '@pullbook/charts';
import { type Remark, remark } from '@pullbook/core/remark';
import type { NamedStill } from '@pullbook/views/publish';
import { drawnStill } from './drawn-still.ts';
import { publishedName } from './file-names.ts';
import type { PictureWanted } from './model.ts';
import type { Making, Piece } from './piece.ts';

/** The set, or the pictures named, each in every size and format asked for. */
export async function stillPieces(making: Making, remarks: Remark[]): Promise<Piece[]> {
  const { answer, options, signature, request, stem, numbers } = making;
  const { stillSet } = await import('@pullbook/views/publish');
  const { pictures, formats, theme, ground } = request;
  const set = stillSet(answer, options, signature);
  remarks.push(...missing(pictures, set));
  const wanted = set.filter((still) => pictures === null || pictures.some((one) => isOf(one, still)));
  return wanted.flatMap((named) =>
    sizesOf(named, request.sizes, pictures !== null).flatMap((sizeName) =>
      formats.still.map((format): Piece => {
        const { width, height } = STILL_SIZES[sizeName];
        const size = { width, height, theme, ground };
        const parts = [named.name, named.key?.toLowerCase() ?? '', `${width}x${height}`, theme];
        return {
          kind: 'still',
          name: publishedName(stem, [...parts, ground ? '' : 'transparent'], format),
          make: async (path) => {
            await writeFile(path, await drawnStill(named.still, size, format, numbers));
            return { width, height, seconds: null };
          },
        };
      }),
    ),
  );
}

/** A thumbnail is drawn at its own size, and nothing else is, unless it is named. */
function sizesOf(
  { name }: NamedStill,
  sizes: readonly StillSizeName[],
  isNamed: boolean,
): readonly StillSizeName[] {
  if (name === 'thumbnail') return ['thumbnail'];
  const others = sizes.filter((size) => size !== 'thumbnail');
  return isNamed && others.length === 0 ? sizes : others;
}

const isOf = (wanted: PictureWanted, { name, key }: NamedStill): boolean =>
  wanted.name === name && (wanted.key === null || wanted.key === key);

function missing(pictures: readonly PictureWanted[] | null, set: readonly NamedStill[]): Remark[] {
  const absent = (pictures ?? []).filter((wanted) => !set.some((still) => isOf(wanted, still)));
  if (absent.length === 0) return [];
  const named = absent.map(({ name, key }) => (key === null ? name : `${name} of ${key}`)).join(', ');
  const has = [...new Set(set.map(({ name }) => name))].join(', ');
  const message = `This trial has nothing for ${named}, so that no such picture was made. It has: ${has}.`;
  return [remark('caution', 'no-such-picture', message)];
}
