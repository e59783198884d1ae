import type { ThemeName } from '@pullbook/charts';
import { useSyncExternalStore } from 'react';
import { onViewChoices, viewChoices } from './view-choices.ts';

const machineIsDark = matchMedia('(prefers-color-scheme: dark)');

/** The theme that is on: the person's choice, or the machine's where he made none. */
export function themeShown(): ThemeName {
  const { theme } = viewChoices();
  if (theme !== 'system') return theme;
  return machineIsDark.matches ? 'dark' : 'light';
}

function onTheme(listener: () => void): () => void {
  const stop = onViewChoices(listener);
  machineIsDark.addEventListener('change', listener);
  return () => {
    stop();
    machineIsDark.removeEventListener('change', listener);
  };
}

export function useTheme(): ThemeName {
  return useSyncExternalStore(onTheme, themeShown);
}

/** Puts the theme on the document and keeps it there. */
export function applyTheme(): void {
  const apply = () => {
    document.documentElement.dataset.theme = themeShown();
  };
  apply();
  onTheme(apply);
}
