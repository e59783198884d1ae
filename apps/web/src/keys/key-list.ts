/** Every key of the pages, once: the shortcuts listen by it and the overlay shows it. */
export const KEY_LIST = [
  { id: 'startTrial', press: 't', shown: 'T', does: 'Start a trial', where: 'Everywhere' },
  { id: 'addPulls', press: 'i', shown: 'I', does: 'Add pulls', where: 'Everywhere' },
  { id: 'find', press: '/', shown: '/', does: 'Find in the list', where: 'Everywhere' },
  { id: 'trials', press: '1', shown: '1', does: 'Go to the trials', where: 'Everywhere' },
  { id: 'pulls', press: '2', shown: '2', does: 'Go to the pulls', where: 'Everywhere' },
  { id: 'combinations', press: '3', shown: '3', does: 'Go to the combinations', where: 'Everywhere' },
  { id: 'shop', press: '4', shown: '4', does: 'Go to the shop', where: 'Everywhere' },
  { id: 'reach', press: '5', shown: '5', does: 'Go to what was asked for, and ask', where: 'Everywhere' },
  { id: 'history', press: 'h', shown: 'H', does: 'Go to the history', where: 'Everywhere' },
  { id: 'undo', press: '$mod+z', shown: 'Ctrl Z', does: 'Undo the last act', where: 'Everywhere' },
  { id: 'theme', press: 'd', shown: 'D', does: 'Light or dark', where: 'Everywhere' },
  { id: 'units', press: 'u', shown: 'U', does: 'US or SI units', where: 'Everywhere' },
  { id: 'keys', press: '[Shift]+?', shown: '?', does: 'Show these keys', where: 'Everywhere' },
  {
    id: 'next',
    press: 'n',
    shown: 'N',
    does: 'The next pull: add one like this or the last, or plan it',
    where: 'On a pull, the pulls, or a trial',
  },
  { id: 'match', press: 'm', shown: 'M', does: 'Go to the match', where: 'On a trial or a combination' },
  {
    id: 'askPower',
    press: 'r',
    shown: 'R',
    does: 'Ask how it makes a power',
    where: 'On a trial, a combination or a match',
  },
  { id: 'publish', press: 'p', shown: 'P', does: 'Publish', where: 'On a trial' },
  { id: 'present', press: 's', shown: 'S', does: 'Show it step by step', where: 'On a trial' },
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
    where: 'On a trial, a pull, a match or a ladder',
  },
] as const;

export type KeyId = (typeof KEY_LIST)[number]['id'];
