import { useSyncExternalStore } from 'react';

let brought: File | null = null;
const listeners = new Set<() => void>();

/** A bundle that was dropped or chosen, for the page that opens it; `null`: put away. */
export function bringBundle(file: File | null): void {
  brought = file;
  for (const listener of listeners) listener();
}

export function useBroughtBundle(): File | null {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => brought,
  );
}

/** Whether a file is a bundle by its name; what is in it is for the server to say. */
export const isBundle = ({ name }: { name: string }): boolean => /\.zip$/i.test(name);
