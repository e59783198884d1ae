import fc from 'fast-check';
import { expect, test } from 'vitest';
import { publishedName, publishedStem } from './file-names.ts';

const ID = '12ab34cd-0000-4000-8000-000000000000';

test('says what is in it', () => {
  const stem = publishedStem('What does the 12° longer cam add?', ID);
  expect(publishedName(stem, ['power', '1920x1080', 'dark', ''], 'png')).toBe(
    'what-does-the-12-longer-cam-add-power-1920x1080-dark.png',
  );
  expect(publishedStem('Größere Nocke', ID)).toBe('grossere-nocke');
  expect(publishedName('cam', ['pictures'], '')).toBe('cam-pictures');
});

test('words that leave no letter are told apart by the id', () => {
  expect(publishedStem('???', ID)).toBe('trial-12ab34cd');
  expect(publishedStem('何馬力?', ID)).toBe('trial-12ab34cd');
});

test('is short and plain whatever the words are', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (words) => {
      expect(publishedStem(words, ID)).toMatch(/^[a-z0-9][a-z0-9-]{0,59}$/u);
    }),
    { seed: 8 },
  );
});
