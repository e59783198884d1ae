import { type ReachInput, reachPart } from '@pullbook/core/reach';
import type { SearchNews, SearchOrder } from './messages.ts';

/** What of a worker's surroundings is used here; the page's types know only a page's. */
const here = globalThis as unknown as {
  postMessage: (news: SearchNews) => void;
  onmessage: ((event: MessageEvent<SearchOrder>) => void) | null;
};

let input: ReachInput | null = null;

here.onmessage = ({ data: order }) => {
  if ('input' in order) {
    input = order.input;
    return;
  }
  try {
    if (input === null) throw new Error('a part of a search came before what is searched by');
    here.postMessage({ output: reachPart(input, order.name, order.given) });
  } catch (reason) {
    here.postMessage({ trouble: reason instanceof Error ? reason.message : String(reason) });
  }
};
