import type { CursorTable } from '@pullbook/views';
import { useState, useSyncExternalStore } from 'react';
import { nearest } from './nearest.ts';

/**
 * Where the cursor of a chart stands: a place on its axis, kept outside of the page's own state, so that a move draws the
 * hair and the figures anew and nothing else.
 */
export class Cursor {
  private at: number | null = null;
  private readonly listeners = new Set<() => void>();

  readonly read = (): number | null => this.at;

  readonly listen = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  moveTo(at: number): void {
    if (at === this.at) return;
    this.at = at;
    for (const listener of this.listeners) listener();
  }
}

export function useCursor(): Cursor {
  return useState(() => new Cursor())[0];
}

/** The node of a table that the cursor stands on; before it was moved, where the table has it start. */
export function useNode(cursor: Cursor, table: CursorTable): number {
  const at = useSyncExternalStore(cursor.listen, cursor.read);
  return at === null ? Math.min(table.start, table.at.length - 1) : nearest(table.at, at);
}
