import { useEffect, useEffectEvent } from 'react';
import { tinykeys } from 'tinykeys';
import { viewChoices } from '../view/view-choices.ts';
import { KEY_LIST, type KeyId } from './key-list.ts';

/** A letter typed into a field, or pressed while a dialog is open, is not a shortcut. */
function isForSomethingElse(event: KeyboardEvent): boolean {
  if (event.defaultPrevented || event.repeat) return true;
  // With Ctrl or Cmd it is no single letter, which some need switched off.
  if (!(event.ctrlKey || event.metaKey) && !viewChoices().letterKeys) return true;
  const at = event.target;
  if (!(at instanceof Element)) return false;
  return at.closest('input:not([type=checkbox], [type=radio]), textarea, select, [role=dialog]') !== null;
}

/** While the part is on the page, the key does this. */
export function useKey(id: KeyId, act: () => void): void {
  const run = useEffectEvent(act);
  useEffect(() => {
    const key = KEY_LIST.find((one) => one.id === id)!;
    return tinykeys(
      window,
      {
        [key.press]: (event) => {
          event.preventDefault();
          run();
        },
      },
      { ignore: isForSomethingElse },
    );
  }, [id]);
}

/** The key as printed on a button: `T`. */
export function shownKey(id: KeyId): string {
  return KEY_LIST.find((one) => one.id === id)!.shown;
}
