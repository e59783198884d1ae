import type { Book } from '@pullbook/store';
import type { Signature } from '@pullbook/views';
import { markAddress, type ShopMark, storedMark } from './mark.ts';
import { settingsOf } from './settings.ts';

/** The shop's name and mark for its stills; `null` where it has neither. A mark that no longer passes is left out. */
export async function signatureOf(book: Book): Promise<Signature> {
  const { shopName } = await settingsOf(book);
  const mark = await markOf(book);
  if (mark === null) return shopName === '' ? null : { name: shopName, mark };
  const { width, height } = mark;
  return { name: shopName, mark: { address: markAddress(mark), width, height } };
}

/** The shop's mark, looked at again before it is shown: a book may come from elsewhere. `null`: none that passes. */
export async function markOf(book: Book): Promise<ShopMark | null> {
  const { mark } = await settingsOf(book);
  const read = mark === null ? null : storedMark(mark);
  return read?.ok ? read.value : null;
}
