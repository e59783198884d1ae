import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { type Remark, remark } from '@pullbook/core/remark';
import { exportFiles, ofTrial } from '@pullbook/formats';
import { todayHere } from '../edge/day-text.ts';
import { zipOf } from '../zip.ts';
import { publishedName } from './file-names.ts';
import { type Making, type Piece, PLAIN } from './piece.ts';

/** The trial with all that it rests on as one zip, to be opened as a trial by another book. */
export async function bundlePieces({ book, answer, request, stem, signal }: Making): Promise<Piece[]> {
  return [{ kind: 'bundle', name: publishedName(stem, ['bundle'], 'zip'), make }];

  async function make(path: string): ReturnType<Piece['make']> {
    const reader = request.privateToo ? 'shop' : 'everyone';
    const one = ofTrial(await book.outline(), answer.trial.id, reader, todayHere());
    if (!one.ok) return { trouble: one.remarks[0]! };
    const { contents, originalsLeftOut, question } = one.value;
    const source = {
      channelsOf: (id: string) => book.channels(id),
      originalOf: (hash: string) => book.original(hash),
    };
    const files = exportFiles(contents, source, question);
    await pipeline(Readable.from(zipOf(files)), createWriteStream(path, { flags: 'wx' }), { signal });
    return { ...PLAIN, remarks: leftOutWords(originalsLeftOut) };
  }
}

function leftOutWords(names: readonly string[]): Remark[] {
  if (names.length === 0) return [];
  const message = `Original files that hold other pulls, which are not for everyone, stay in the shop: ${names.join(', ')}. The curves read from them are in the bundle.`;
  return [remark('note', 'originals-left-out', message)];
}
