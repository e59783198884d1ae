import type { ViewChoices } from './view-choices.ts';

const STORED_AS = 'pullbook.theme';
const THEMES: readonly ViewChoices['theme'][] = ['system', 'light', 'dark'];

/** The theme that was chosen for this machine; `null`: none, it is as the shop has it. */
export function machineTheme(): ViewChoices['theme'] | null {
  try {
    const stored = localStorage.getItem(STORED_AS);
    return THEMES.find((theme) => theme === stored) ?? null;
  } catch {
    // Storage switched off: the shop's theme stands.
    return null;
  }
}

export function rememberTheme(theme: ViewChoices['theme'] | null): void {
  try {
    if (theme === null) localStorage.removeItem(STORED_AS);
    else localStorage.setItem(STORED_AS, theme);
  } catch {
    // Storage switched off: the choice holds until the page is left.
  }
}
