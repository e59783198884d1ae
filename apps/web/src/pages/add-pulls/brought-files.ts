import { useSyncExternalStore } from 'react';

/** A file brought to the page, by drop or by choice. `id` tells two of one name apart. */
export interface BroughtFile {
  id: number;
  file: File;
}

let brought: readonly BroughtFile[] = [];
let nextId = 1;
const listeners = new Set<() => void>();

function set(files: readonly BroughtFile[]): void {
  brought = files;
  for (const listener of listeners) listener();
}

/** Adds files to those waiting on the page that adds pulls. They wait through a change of page. */
export function bringFiles(files: readonly File[]): void {
  set([...brought, ...files.map((file) => ({ id: nextId++, file }))]);
}

export function sendAway(id: number): void {
  set(brought.filter((one) => one.id !== id));
}

export function useBroughtFiles(): readonly BroughtFile[] {
  return useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => brought,
  );
}
