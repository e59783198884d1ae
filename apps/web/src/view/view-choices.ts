import type { DecimalMark, UnitSystem } from '@pullbook/core/quantity';
import { useSyncExternalStore } from 'react';

/** How this person wants things shown, on this machine. Nothing of it is in the book. */
export interface ViewChoices {
  /** `system`: as the machine is set. */
  theme: 'system' | 'light' | 'dark';
  units: UnitSystem;
  decimalMark: DecimalMark;
  /** Single-letter keys; some people need them off (WCAG 2.1.4). */
  letterKeys: boolean;
}

const STORED_AS = 'pullbook.view';
const FIRST: ViewChoices = { theme: 'system', units: 'us', decimalMark: '.', letterKeys: true };

function oneOf<T>(value: unknown, allowed: readonly T[], otherwise: T): T {
  return allowed.includes(value as T) ? (value as T) : otherwise;
}

function remembered(): ViewChoices {
  let stored: Partial<Record<keyof ViewChoices, unknown>> = {};
  try {
    stored = JSON.parse(localStorage.getItem(STORED_AS) ?? '{}');
  } catch {
    // Storage switched off or its text damaged: the first choices stand.
  }
  return {
    theme: oneOf(stored.theme, ['system', 'light', 'dark'], FIRST.theme),
    units: oneOf(stored.units, ['us', 'si'], FIRST.units),
    decimalMark: oneOf(stored.decimalMark, ['.', ','], FIRST.decimalMark),
    letterKeys: oneOf(stored.letterKeys, [true, false], FIRST.letterKeys),
  };
}

let current = remembered();
const listeners = new Set<() => void>();

export function viewChoices(): ViewChoices {
  return current;
}

export function onViewChoices(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Changes some choices, remembers them and tells every page part that shows by them. */
export function chooseView(change: Partial<ViewChoices>): void {
  current = { ...current, ...change };
  try {
    localStorage.setItem(STORED_AS, JSON.stringify(current));
  } catch {
    // Storage switched off: the choice holds until the page is left.
  }
  for (const listener of listeners) listener();
}

export function useViewChoices(): ViewChoices {
  return useSyncExternalStore(onViewChoices, viewChoices);
}
