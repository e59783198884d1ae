import { createHash } from 'node:crypto';
import type { AirReading } from '@pullbook/core/air';
import type { DemoPublication } from '@pullbook/demo';
import type { Book } from '@pullbook/store';
import { amendPull } from './amend-pull.ts';
import { publicationOf } from './publish/note-publication.ts';
import { stillOf } from './publish/still.ts';
import { answerOf } from './trial-answer.ts';

const OPTIONS = { units: 'us', decimalMark: '.' } as const;

/**
 * What the demo's shop published before it saw its mistake, with the figures that its book then gave; then the mistake is
 * amended. The still is truly drawn, for its size and hash, and kept no more than one that left a shop.
 */
export async function publishAndMend(
  book: Book,
  { links, miswritten, at }: DemoPublication,
  { id, trialId, pullId, weather }: { id: string; trialId: string; pullId: string; weather: AirReading },
): Promise<void> {
  const answer = await answerOf(book, (await book.trial(trialId))!);
  const still = await stillOf(book, trialId, OPTIONS, {
    format: 'svg',
    size: '1080p',
    theme: 'light',
    ground: true,
  });
  if (!still.ok) throw new Error(`Demo publication: ${still.remarks[0]?.message}`);
  const { fileName: name, bytes } = still.value;
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  await book.addPublication({
    ...publicationOf(answer, OPTIONS, {
      files: [{ name, kind: 'still', bytes: bytes.length, sha256 }],
      privateToo: false,
      isWindowed: false,
    }),
    id,
    links,
    at,
  });
  const amended = await amendPull(book, pullId, { weather }, miswritten.reason);
  if (!amended.ok) throw new Error(`Demo amendment: ${amended.remarks[0]?.message}`);
}
