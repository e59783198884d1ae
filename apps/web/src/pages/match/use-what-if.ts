import type { WhatIfName, WhatIfText } from '@pullbook/views/match';
import { useNavigate } from '@tanstack/react-router';
import { useMemo, useRef } from 'react';
import type { MatchSearch } from '../../search.ts';

/** What is tried, kept in the address: shared by a link, taken back by the browser's button. */
export function useWhatIf(search: MatchSearch) {
  const navigate = useNavigate();
  const last = useRef<WhatIfName | null>(null);
  const { low, high, ...asked } = search;
  const written = JSON.stringify(asked);
  const text = useMemo(() => JSON.parse(written) as WhatIfText, [written]);
  const go = (next: MatchSearch, replace: boolean) =>
    void navigate({ to: '.', search: next, replace, resetScroll: false });

  return {
    text,
    /** One place in the browser's history for each thing that is tried, however many steps it took. */
    change: (name: WhatIfName, value: string | undefined) => {
      const { [name]: _, ...others } = search;
      go(value === undefined ? others : { ...others, [name]: value }, last.current === name);
      last.current = name;
    },
    reset: () => {
      last.current = null;
      go({ on: search.on, low, high }, false);
    },
    zoom: (range: readonly [number, number] | null) =>
      go({ ...search, low: range?.[0], high: range?.[1] }, false),
  };
}
