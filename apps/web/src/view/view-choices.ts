import type { SettingsReport } from '@pullbook/workshop';
import { useSyncExternalStore } from 'react';
import { machineTheme, rememberTheme } from './machine-theme.ts';
import { settingsOfPage } from './settings-of-page.ts';

/**
 * How things are shown. Units, decimal mark and keys are the shop's and stand in the book, so that every machine and the
 * command line say one figure one way. The theme may differ by machine: a screen in a dark cell and one by a window in
 * the office are read by the same person on the same day.
 */
export interface ViewChoices extends Pick<SettingsReport, 'theme' | 'units' | 'decimalMark' | 'letterKeys'> {
  /** What a pull is first shown by and a trial starts with. */
  correction: SettingsReport['correction'];
}

let shop: ViewChoices = settingsOfPage();
let ofMachine = machineTheme();
let current = inForce();
const listeners = new Set<() => void>();

function inForce(): ViewChoices {
  return ofMachine === null ? shop : { ...shop, theme: ofMachine };
}

function changed(): void {
  current = inForce();
  for (const listener of listeners) listener();
}

export function viewChoices(): ViewChoices {
  return current;
}

export function onViewChoices(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** The settings as the book has them now. */
export function takeShopSettings(settings: Partial<ViewChoices>): void {
  const { theme, units, decimalMark, letterKeys, correction } = { ...shop, ...settings };
  shop = { theme, units, decimalMark, letterKeys, correction };
  changed();
}

/** The theme of this machine; `null`: as the shop. */
export function chooseTheme(theme: ViewChoices['theme'] | null): void {
  ofMachine = theme;
  rememberTheme(theme);
  changed();
}

export function useViewChoices(): ViewChoices {
  return useSyncExternalStore(onViewChoices, viewChoices);
}

/** What this machine chose for itself; `null`: as the shop. */
export function useMachineTheme(): ViewChoices['theme'] | null {
  return useSyncExternalStore(onViewChoices, () => ofMachine);
}
