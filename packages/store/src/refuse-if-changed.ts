import type { Rows } from './connection.ts';
import { BookTrouble, type LogEntry } from './model.ts';
import { readLogSince, readStamp } from './rows/log.ts';

/**
 * Throws `changed meanwhile` where somebody wrote about the subject after what the writer had looked at. Asked in the
 * transaction of the change, so that nothing comes in between. Without a stamp nothing is asked. `concerns`: whether an
 * entry is about what is changed now; others do not stand in its way.
 */
export async function refuseIfChanged(
  rows: Rows,
  subject: string,
  stamp: string | undefined,
  concerns: (entry: LogEntry) => boolean = () => true,
): Promise<void> {
  if (stamp === undefined || (await readStamp(rows, subject)) === stamp) return;
  const since = (await readLogSince(rows, subject, stamp)).filter(concerns);
  const last = since.at(-1);
  if (last === undefined) return;
  const why = last.reason === '' ? '' : ` (“${last.reason}”)`;
  const message = `This was changed meanwhile, in another window or by another program: ${last.act} at ${last.at}${why}. Nothing of yours was written. Look at what stands now, then keep yours too, or leave it.`;
  throw new BookTrouble('changed meanwhile', message, since);
}
