import { useSyncExternalStore } from 'react';

const wide = matchMedia('(min-width: 1081px)');

function onWidth(listener: () => void): () => void {
  wide.addEventListener('change', listener);
  return () => wide.removeEventListener('change', listener);
}

/** Whether there is room for a column beside the main one. */
export function useWide(): boolean {
  return useSyncExternalStore(onWidth, () => wide.matches);
}
