import { useNavigate } from '@tanstack/react-router';
import { useMemo } from 'react';
import type { KeptReachSearch, ReachAsk, ReachSearch } from '../../search.ts';
import { useViewChoices } from '../../view/view-choices.ts';
import { useSettled } from '../combination/use-settled.ts';
import { withUnit } from './with-unit.ts';

/** What is asked, kept in the address as it was typed, so that it can be sent; it is looked up once the typing has stopped. */
export function useAsk(search: ReachSearch) {
  const navigate = useNavigate();
  const { units } = useViewChoices();
  const { rung, low, high, ...typed } = search;
  const written = JSON.stringify({ ...typed, units });
  const asked = useMemo(() => {
    const { units: by, ...ask } = JSON.parse(written) as ReachAsk & { units: 'us' | 'si' };
    return withUnit(ask, by);
  }, [written]);
  const settled = useSettled(asked);
  const go = (next: ReachSearch) =>
    void navigate({ to: '.', search: next, replace: true, resetScroll: false });
  return {
    typed: typed as ReachAsk,
    settled,
    /** Something was typed that was not asked yet. */
    isTyping: settled !== asked,
    change: (change: ReachAsk) => go(without({ ...typed, ...change })),
    look: (at: KeptReachSearch) => go(without({ ...search, ...at })),
  };
}

/** What was emptied stands in no address. */
const without = (search: ReachSearch): ReachSearch =>
  Object.fromEntries(Object.entries(search).filter(([, value]) => value !== undefined && value !== ''));
