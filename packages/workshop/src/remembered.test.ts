import type { Book } from '@pullbook/store';
import { expect, test } from 'vitest';
import { remembered, rememberedNow } from './remembered.ts';

const anyBook = () => ({}) as Book;

test('asked for twice at once it is worked out once, and then remembered, waiting or not', async () => {
  const book = anyBook();
  let times = 0;
  const work = async () => {
    times += 1;
    await Promise.resolve();
    return { times };
  };
  const [one, other] = await Promise.all([remembered(book, 'it', work), remembered(book, 'it', work)]);
  expect(one).toBe(other);
  expect(await remembered(book, 'it', work)).toBe(one);
  expect(rememberedNow(book, 'it', () => ({ times: 0 }))).toBe(one);
  expect(times).toBe(1);
  expect(await remembered(anyBook(), 'it', work)).toEqual({ times: 2 });
});

test('a failure reaches all who wait and is not remembered', async () => {
  const book = anyBook();
  const fails = async () => {
    throw new Error('thread gone');
  };
  const asked = [remembered(book, 'it', fails), remembered(book, 'it', fails)];
  for (const one of await Promise.allSettled(asked)) expect(one.status).toBe('rejected');
  expect(await remembered(book, 'it', async () => 'now')).toBe('now');
});
