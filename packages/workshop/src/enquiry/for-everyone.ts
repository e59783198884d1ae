import { isOpen } from '@pullbook/core/pull';
import { accepted, type Result, remark } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { KeptEnquiry } from '@pullbook/views/reach';
import { asOfToday } from '../audience.ts';
import { refuse } from '../refuse.ts';

/**
 * A kept enquiry as people outside may see it: without those of the nearest that were measured on pulls which are not for everyone, and
 * that is said. Refused where the answer itself rests on such pulls: no name can be left out of it.
 */
export async function forEveryone(book: Book, kept: KeptEnquiry): Promise<Result<KeptEnquiry>> {
  const { enquiry } = kept;
  const { near } = enquiry.answer;
  const ids = [...new Set([...enquiry.pullIds, ...near.flatMap(({ pullIds }) => pullIds)])];
  const heads = (await book.pullHeadsOf(ids)).map(asOfToday);
  const held = new Set(heads.flatMap(({ id, audience }) => (isOpen(audience) ? [] : [id])));
  const own = heads.filter(({ id }) => held.has(id) && enquiry.pullIds.includes(id));
  if (own.length > 0) {
    const names = own
      .slice(0, MOST_NAMED)
      .map(({ name }) => `"${name}"`)
      .join(', ');
    const more = own.length > MOST_NAMED ? ` and ${own.length - MOST_NAMED} more` : '';
    return refuse(
      'not-for-everyone',
      `The answer rests on ${own.length === 1 ? 'a pull that is' : 'pulls that are'} not for everyone: ${names}${more}. Open ${own.length === 1 ? 'it' : 'them'} first, or ask for the card all the same (--private-too, or the tick on the page).`,
    );
  }
  const open = near.filter(({ pullIds }) => !pullIds.some((id) => held.has(id)));
  if (open.length === near.length) return accepted(kept);
  const left = near.length - open.length;
  const message = `${left} of the nearest measured ${left === 1 ? 'is' : 'are'} left out: ${left === 1 ? 'its' : 'their'} pulls are not for everyone.`;
  return accepted({ ...kept, enquiry: { ...enquiry, answer: { ...enquiry.answer, near: open } } }, [
    remark('note', 'near-left-out', message),
  ]);
}

const MOST_NAMED = 3;
