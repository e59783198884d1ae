import { useEffect, useState } from 'react';
import { FIND_FIELD } from '../frame/find-focus.ts';

/**
 * The text of a list's filter, which stands in the address too. The address follows the hand a moment later, so the field
 * goes by its own text while it is written in, and by the address when it changed by other means (back, forward).
 */
export function useFindText(
  inAddress: string | undefined,
  onFind: (find: string | undefined) => void,
): [text: string, onText: (text: string) => void] {
  const [text, setText] = useState(inAddress ?? '');
  useEffect(() => {
    if (document.activeElement?.id !== FIND_FIELD) setText(inAddress ?? '');
  }, [inAddress]);
  return [
    text,
    (typed) => {
      setText(typed);
      onFind(typed.trim() === '' ? undefined : typed);
    },
  ];
}
