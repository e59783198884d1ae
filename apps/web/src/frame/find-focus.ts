/** The filter field of the list on the page, if there is one yet. */
export const FIND_FIELD = 'find';

/** Puts the focus into the list's filter, as soon as the list is there. */
export function focusFind(framesLeft = 60): void {
  const field = document.getElementById(FIND_FIELD);
  if (field instanceof HTMLInputElement) {
    field.focus();
    field.select();
  } else if (framesLeft > 0) {
    requestAnimationFrame(() => focusFind(framesLeft - 1));
  }
}
