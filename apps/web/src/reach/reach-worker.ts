import { bandedRung, ladderOf, type ReachInput, screenReach, whatIsLeft } from '@pullbook/core/reach';
import type { PartName, SearchNews, SearchOrder, SearchParts } from './messages.ts';

/** What of a worker's surroundings is used here; the page's types know only a page's. */
const here = globalThis as unknown as {
  postMessage: (news: SearchNews) => void;
  onmessage: ((event: MessageEvent<SearchOrder>) => void) | null;
};

let input: ReachInput | null = null;

const PARTS: {
  [Name in PartName]: (by: ReachInput, given: SearchParts[Name]['given']) => SearchParts[Name]['gives'];
} = {
  screen: screenReach,
  ladder: (by, { screened, isWhole }) => ladderOf(by, screened, isWhole),
  band: (by, { rung }) => bandedRung(by, rung),
  left: (by, { place }) => whatIsLeft(by, place),
};

function outputOf(order: Exclude<SearchOrder, { input: ReachInput }>): SearchParts[PartName]['gives'] {
  if (input === null) throw new Error('a part of a search came before what is searched by');
  const part = PARTS[order.name] as (by: ReachInput, given: unknown) => SearchParts[PartName]['gives'];
  return part(input, order.given);
}

here.onmessage = ({ data: order }) => {
  if ('input' in order) {
    input = order.input;
    return;
  }
  try {
    here.postMessage({ output: outputOf(order) });
  } catch (reason) {
    here.postMessage({ trouble: reason instanceof Error ? reason.message : String(reason) });
  }
};
