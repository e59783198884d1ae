import { expect, test } from 'vitest';
import { PRESENT_KEYS, presentKey } from './present-keys.ts';

const bare = { shiftKey: false, ctrlKey: false, metaKey: false, altKey: false };

test('every key that is shown is heard as what it says, and none means two things', () => {
  for (const { id, press } of PRESENT_KEYS) {
    for (const pressed of press as readonly string[]) {
      const key = pressed.replace('Shift+', '');
      expect(presentKey({ ...bare, key, shiftKey: pressed !== key })).toBe(id);
    }
  }
  const pressed = PRESENT_KEYS.flatMap(({ press }) => press as readonly string[]);
  expect(new Set(pressed).size).toBe(pressed.length);
});

test('what clickers send is heard', () => {
  const sent = ['PageDown', 'PageUp', '.', 'F5', 'Escape'].map((key) => presentKey({ ...bare, key }));
  expect(sent).toEqual(['next', 'back', 'dark', 'whole', 'leave']);
});

test('what belongs to the browser is left alone', () => {
  expect(presentKey({ ...bare, key: 'r', ctrlKey: true })).toBeNull();
  expect(presentKey({ ...bare, key: 'ArrowLeft', altKey: true })).toBeNull();
});
