import type { ReachAnswer, ReachInput, ReachProgress } from '@pullbook/core/reach';
import { useCallback, useEffect, useRef, useState } from 'react';
import { searchReach } from './search-reach.ts';
import { type SearchWorkers, searchWorkers } from './search-workers.ts';

export interface Search {
  /** What was searched by; `null`: nothing yet. */
  of: ReachInput | null;
  answer: ReachAnswer | null;
  /** The ladder as far as it is; `null`: not begun, or over. */
  progress: ReachProgress | null;
  state: 'idle' | 'searching' | 'stopped' | 'done';
  trouble: Error | null;
}

const IDLE: Search = { of: null, answer: null, progress: null, state: 'idle', trouble: null };

/**
 * Searches by what it is given, anew whenever that changes; the search before is cancelled. `null`: nothing to search, and what was
 * found before stands.
 */
export function useSearch(input: ReachInput | null) {
  const [search, setSearch] = useState(IDLE);
  const running = useRef<AbortController | null>(null);
  const workers = useRef<SearchWorkers | null>(null);

  useEffect(() => {
    workers.current = searchWorkers();
    return () => workers.current?.close();
  }, []);

  const begin = useCallback((of: ReachInput) => {
    running.current?.abort();
    const control = new AbortController();
    const { signal } = control;
    running.current = control;
    setSearch({ ...IDLE, of, state: 'searching' });
    searchReach(of, workers.current!, {
      signal,
      onProgress: (progress) => {
        if (!signal.aborted) setSearch({ ...IDLE, of, progress, state: 'searching' });
      },
    }).then(
      (answer) => {
        if (!signal.aborted) setSearch({ ...IDLE, of, answer, state: 'done' });
      },
      (reason: unknown) => {
        if (signal.aborted) return;
        const trouble = reason instanceof Error ? reason : new Error(String(reason));
        setSearch((before) => ({ ...before, state: 'stopped', trouble }));
      },
    );
  }, []);

  useEffect(() => {
    if (input !== null) begin(input);
    return () => running.current?.abort();
  }, [input, begin]);

  // What was found by other figures is no answer by these.
  const found = input === null || search.of === input ? search : IDLE;
  return {
    ...found,
    cancel: () => {
      running.current?.abort();
      setSearch((before) => (before.state === 'searching' ? { ...before, state: 'stopped' } : before));
    },
    again: () => {
      if (input !== null) begin(input);
    },
  };
}
