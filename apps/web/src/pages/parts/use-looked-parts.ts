import { useState } from 'react';
import { queryClient } from '../../api/query-client.ts';
import type { PartsAtHand } from '../../api/reach.ts';

/** The stamp of the parts list as it stood when this part came onto the page: what is typed here is an answer to that. */
export function useLookedParts(): string | undefined {
  const [stamp] = useState(
    () => queryClient.getQueriesData<PartsAtHand>({ queryKey: ['parts'] }).at(-1)?.[1]?.stamp,
  );
  return stamp;
}
