import type { ShownPublication } from '@pullbook/views/publish';
import { expect, test } from 'vitest';
import { saidAlike } from './said-alike.ts';

const dayOf = (instant: string) => instant.slice(0, 10);
const publication = (id: string, fields: Partial<ShownPublication> = {}) =>
  ({
    id,
    trialId: 'cam',
    question: 'What does it add?',
    sentence: 'It adds 15 hp.',
    stale: [],
    privateToo: false,
    at: '2026-03-14T10:42:00Z',
    ...fields,
  }) as unknown as ShownPublication;
const stale = [{ label: 'B, average power', said: '412.4 hp', now: '409.0 hp' }];

test('a day’s of one trial that say the same stand together, the first of them before the others', () => {
  const all = [
    publication('3', { at: '2026-03-14T12:00:00Z' }),
    publication('other', { trialId: 'pulley' }),
    publication('2', { at: '2026-03-14T11:00:00Z' }),
    publication('1'),
  ];
  const ids = saidAlike(all, dayOf).map(({ first, others }) => [first.id, ...others.map(({ id }) => id)]);
  expect(ids).toEqual([['3', '2', '1'], ['other']]);
});

test.each([
  ['of another day', { at: '2026-03-15T10:42:00Z' }],
  ['that says something else', { sentence: 'It adds 14 hp.' }],
  ['that holds no longer', { stale }],
  ['that is not for everyone', { privateToo: true }],
])('one %s stands alone', (_, fields) => {
  expect(saidAlike([publication('1'), publication('2', fields)], dayOf)).toHaveLength(2);
});
