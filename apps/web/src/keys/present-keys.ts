/** Keys that work while a trial is presented, once: the page hears by it and the overlay shows it. A clicker sends some of them. */
export const PRESENT_KEYS = [
  {
    id: 'next',
    press: ['ArrowRight', 'ArrowDown', 'PageDown', ' ', 'Enter'],
    shown: '→',
    does: 'The next step; a clicker’s forward too',
  },
  {
    id: 'back',
    press: ['ArrowLeft', 'ArrowUp', 'PageUp', 'Backspace'],
    shown: '←',
    does: 'The step before; a clicker’s back too',
  },
  { id: 'first', press: ['Home'], shown: 'Home', does: 'The first step' },
  { id: 'last', press: ['End'], shown: 'End', does: 'The last step' },
  { id: 'again', press: ['r', 'R'], shown: 'R', does: 'Draw the step again' },
  {
    id: 'cursorBack',
    press: ['Shift+ArrowLeft', 'Shift+ArrowDown'],
    shown: 'Shift ←',
    does: 'Cursor one node back',
  },
  {
    id: 'cursorOn',
    press: ['Shift+ArrowRight', 'Shift+ArrowUp'],
    shown: 'Shift →',
    does: 'Cursor one node on',
  },
  {
    id: 'hold',
    press: ['h', 'H'],
    shown: 'H',
    does: 'Hold the speed under the cursor, a second one beside it; without a cursor let go',
  },
  { id: 'dark', press: ['.', 'b', 'B'], shown: 'B', does: 'Darken the screen, and back' },
  { id: 'theme', press: ['d', 'D'], shown: 'D', does: 'Light or dark' },
  { id: 'whole', press: ['f', 'F', 'F5'], shown: 'F', does: 'Full screen, and back' },
  { id: 'second', press: ['2'], shown: '2', does: 'A second window for another screen' },
  { id: 'keys', press: ['?'], shown: '?', does: 'Show these keys' },
  { id: 'leave', press: ['Escape'], shown: 'Esc', does: 'Leave' },
] as const satisfies readonly { id: string; press: readonly string[]; shown: string; does: string }[];

export type PresentKeyId = (typeof PRESENT_KEYS)[number]['id'];

/** What a key means while presenting; `null`: nothing, or it belongs to the browser. */
export function presentKey(event: {
  key: string;
  shiftKey: boolean;
  ctrlKey: boolean;
  metaKey: boolean;
  altKey: boolean;
}): PresentKeyId | null {
  if (event.metaKey || event.ctrlKey || event.altKey) return null;
  const pressed = event.shiftKey && event.key.startsWith('Arrow') ? `Shift+${event.key}` : event.key;
  return PRESENT_KEYS.find(({ press }) => (press as readonly string[]).includes(pressed))?.id ?? null;
}
