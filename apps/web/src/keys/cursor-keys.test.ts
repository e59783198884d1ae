import { expect, test } from 'vitest';
import { CURSOR_KEYS, cursorKey, WINDOW_KEYS, windowSteps } from './cursor-keys.ts';
import { KEY_LIST } from './key-list.ts';

const bare = { ctrlKey: false, metaKey: false, altKey: false };

test('every key that is shown is heard as what it says', () => {
  for (const { id, press } of CURSOR_KEYS) {
    for (const key of press) expect(cursorKey({ ...bare, key })).toBe(id);
  }
  for (const { press, steps } of WINDOW_KEYS) {
    for (const key of press) expect(windowSteps({ key, shiftKey: false })).toBe(steps);
  }
});

test('no key means two things', () => {
  const pressed = CURSOR_KEYS.flatMap(({ press }) => press as readonly string[]);
  expect(new Set(pressed).size).toBe(pressed.length);
  const everywhere = KEY_LIST.map(({ press }) => press as string);
  expect(new Set(everywhere).size).toBe(everywhere.length);
});

test('what belongs to the browser is left alone; what AltGr writes is not', () => {
  expect(cursorKey({ ...bare, key: 'a', ctrlKey: true })).toBeNull();
  expect(cursorKey({ ...bare, key: 'z', metaKey: true })).toBeNull();
  expect(cursorKey({ ...bare, key: 'q' })).toBeNull();
  expect(cursorKey({ key: '[', ctrlKey: true, altKey: true, metaKey: false })).toBe('markFrom');
});

test('Shift makes ten steps of one', () => {
  expect(windowSteps({ key: 'ArrowLeft', shiftKey: true })).toBe(-10);
  expect(windowSteps({ key: 'PageUp', shiftKey: true })).toBe(10);
  expect(windowSteps({ key: 'x', shiftKey: true })).toBe(0);
});
