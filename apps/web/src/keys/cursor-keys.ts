/** Keys that work while the cursor of a chart has the focus, once: the chart hears by it and the overlay shows it. */
export const CURSOR_KEYS = [
  { id: 'back', press: ['ArrowLeft', 'ArrowDown'], shown: '←', does: 'One node back; with Shift ten' },
  { id: 'on', press: ['ArrowRight', 'ArrowUp'], shown: '→', does: 'One node on; with Shift ten' },
  { id: 'farBack', press: ['PageDown'], shown: 'PgDn', does: 'Ten nodes back' },
  { id: 'farOn', press: ['PageUp'], shown: 'PgUp', does: 'Ten nodes on' },
  { id: 'first', press: ['Home'], shown: 'Home', does: 'The lowest that is shown' },
  { id: 'last', press: ['End'], shown: 'End', does: 'The highest that is shown' },
  { id: 'markFrom', press: ['['], shown: '[', does: 'Mark a range from here' },
  { id: 'markTo', press: [']'], shown: ']', does: 'Mark a range up to here' },
  { id: 'zoom', press: ['z', 'Z', 'Enter'], shown: 'Z', does: 'Zoom to the marked range' },
  { id: 'all', press: ['0'], shown: '0', does: 'Show all again' },
  { id: 'clear', press: ['Escape'], shown: 'Esc', does: 'Clear the mark, else show all again' },
  { id: 'average', press: ['a', 'A'], shown: 'A', does: 'On a trial: average over the marked range' },
  { id: 'count', press: ['w', 'W'], shown: 'W', does: 'On a recording: count only the marked range' },
  {
    id: 'toggle',
    press: ['1', '2', '3', '4', '5', '6', '7', '8', '9'],
    shown: '1 … 9',
    does: 'On a trial: hide or show a combination',
  },
] as const satisfies readonly { id: string; press: readonly string[]; shown: string; does: string }[];

export type CursorKeyId = (typeof CURSOR_KEYS)[number]['id'];

/** What a key means on the cursor; `null`: nothing, or it belongs to the browser. */
export function cursorKey(event: {
  key: string;
  ctrlKey: boolean;
  metaKey: boolean;
  altKey: boolean;
}): CursorKeyId | null {
  // With AltGr, as some keyboards write [ and ], both Ctrl and Alt are down.
  const isWriting = event.ctrlKey && event.altKey;
  if (event.metaKey || (event.ctrlKey && !isWriting)) return null;
  return CURSOR_KEYS.find(({ press }) => (press as readonly string[]).includes(event.key))?.id ?? null;
}

/** Keys that work while an end of a window on a chart has the focus. */
export const WINDOW_KEYS = [
  {
    press: ['ArrowLeft', 'ArrowDown'],
    steps: -1,
    shown: '←',
    does: 'Set the end a step lower; with Shift ten',
  },
  {
    press: ['ArrowRight', 'ArrowUp'],
    steps: 1,
    shown: '→',
    does: 'Set the end a step higher; with Shift ten',
  },
  { press: ['PageDown'], steps: -10, shown: 'PgDn', does: 'Ten steps lower' },
  { press: ['PageUp'], steps: 10, shown: 'PgUp', does: 'Ten steps higher' },
] as const;

/** Steps that a key moves an end of a window; 0: it is no such key. */
export function windowSteps(event: { key: string; shiftKey: boolean }): number {
  const found = WINDOW_KEYS.find(({ press }) => (press as readonly string[]).includes(event.key));
  if (found === undefined) return 0;
  return event.shiftKey && Math.abs(found.steps) === 1 ? 10 * found.steps : found.steps;
}
