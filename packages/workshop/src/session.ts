import { randomUUID } from 'node:crypto';
import type { Book } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';

/**
 * Id of the session a pull belongs to: the one it names, else the pulls of its day in its cell, made where there is
 * none yet. `null` where day or cell is unknown.
 */
export async function sessionFor(book: Book, details: PullDetails): Promise<string | null> {
  if (details.sessionId) return details.sessionId;
  const { recordedAt, cell } = details;
  if (!recordedAt || !cell) return null;
  const day = recordedAt.slice(0, 10);
  const same = (await book.sessions()).find((session) => session.day === day && session.cell === cell);
  if (same) return same.id;
  const session = { id: randomUUID(), name: `${cell}, ${day}`, cell, day, notes: '' };
  await book.addSession(session);
  return session.id;
}
