import fc from 'fast-check';
import { expect, test } from 'vitest';
import { stillFileName } from './still-name.ts';
import { STILL_SIZES } from './still-size.ts';

const size = { ...STILL_SIZES['1080p'], theme: 'dark', ground: true } as const;

test('says what is in it', () => {
  expect(stillFileName('What does the 12° longer cam add?', size, 'png')).toBe(
    'what-does-the-12-longer-cam-add-1920x1080-dark.png',
  );
  expect(stillFileName('Größere Nocke', { ...size, ground: false }, 'svg')).toBe(
    'grossere-nocke-1920x1080-dark-transparent.svg',
  );
  expect(stillFileName('???', size, 'png')).toBe('still-1920x1080-dark.png');
});

test('is short and plain whatever the words are', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (words) => {
      expect(stillFileName(words, size, 'png')).toMatch(/^[a-z0-9][a-z0-9-]{0,59}-1920x1080-dark\.png$/u);
    }),
    { seed: 8 },
  );
});
