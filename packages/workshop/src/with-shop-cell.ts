import { accepted, type Result, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { PullDetails } from './edge/pull-details.ts';
import { settingsOf } from './settings.ts';

/**
 * Details of a new pull with the shop's cell where nobody said any: neither now nor through another pull or its kind of
 * file. A cell that was said to be unknown (`null`) stays so.
 */
export async function withShopCell(book: Book, details: PullDetails): Promise<Result<PullDetails>> {
  if (details.cell !== undefined) return accepted(details);
  const { cell } = await settingsOf(book);
  if (cell === null) return accepted(details);
  return accepted({ ...details, cell }, [
    remark('note', 'cell-of-shop', `No cell was said: ${cell} stands, as the shop's settings have it.`),
  ]);
}
