import { useSyncExternalStore } from 'react';

/** How often something was written from this page. */
let count = 0;
const listeners = new Set<() => void>();

/** Something was written: what it was is said, with its undo. */
export function noteAct(): void {
  count += 1;
  for (const listener of listeners) listener();
}

function onAct(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** How often something was written from this page; 0: nothing yet. */
export function useActs(): number {
  return useSyncExternalStore(onAct, () => count);
}
