/** Every key of the pages, once: the shortcuts listen by it and the overlay shows it. */
export const KEY_LIST = [
  { id: 'startTrial', press: 't', shown: 'T', does: 'Start a trial', where: 'Everywhere' },
  { id: 'addPulls', press: 'i', shown: 'I', does: 'Add pulls', where: 'Everywhere' },
  { id: 'find', press: '/', shown: '/', does: 'Find in the list', where: 'Everywhere' },
  { id: 'trials', press: '1', shown: '1', does: 'Go to the trials', where: 'Everywhere' },
  { id: 'pulls', press: '2', shown: '2', does: 'Go to the pulls', where: 'Everywhere' },
  { id: 'combinations', press: '3', shown: '3', does: 'Go to the combinations', where: 'Everywhere' },
  { id: 'theme', press: 'd', shown: 'D', does: 'Light or dark', where: 'Everywhere' },
  { id: 'units', press: 'u', shown: 'U', does: 'US or SI units', where: 'Everywhere' },
  { id: 'keys', press: '[Shift]+?', shown: '?', does: 'Show these keys', where: 'Everywhere' },
  { id: 'publish', press: 'p', shown: 'P', does: 'Publish', where: 'On a trial' },
  {
    id: 'change',
    press: 'e',
    shown: 'E',
    does: 'Change the trial, or amend the pull',
    where: 'On a trial or a pull',
  },
  {
    id: 'cursor',
    press: 'c',
    shown: 'C',
    does: 'Go to the cursor of the chart',
    where: 'On a trial or a pull',
  },
] as const;

/** Keys that work while the cursor of a chart has the focus; shown in the overlay, heard by the chart itself. */
export const CURSOR_KEYS = [
  { shown: '← →', does: 'Move to the next node' },
  { shown: 'Shift ← →', does: 'Move ten nodes' },
  { shown: 'Home End', does: 'Go to the lowest or highest speed' },
] as const;

export type KeyId = (typeof KEY_LIST)[number]['id'];
