import type { EnquiryAsked } from '@pullbook/core/reach';
import type { ReachAsk } from '../../search.ts';

/** What was asked, as the page for asking has it in its address. */
export function askAgain({ power, what, at, window, boostCap, without, correction }: EnquiryAsked): ReachAsk {
  return {
    power,
    correction,
    ...(what !== 'peak power' && { what }),
    ...(at !== null && { at }),
    ...(window !== null && { window }),
    ...(boostCap !== null && { boostCap }),
    ...(without.length > 0 && { without: without.join(',') }),
  };
}
