import { expect, test } from 'vitest';
import { engineChoices } from './engine-choices.ts';

const engine = (id: string, name: string, buildRevision: string) => ({
  id,
  name,
  buildRevision,
  notes: '',
  invented: false,
  stamp: '1',
});

test('engines of one name are told apart by their builds, others by their names', () => {
  const texts = engineChoices([
    engine('a', 'Six', '1'),
    engine('b', 'Six', 'line-honed'),
    engine('c', 'Four', '1'),
  ]).map(({ text }) => text);
  expect(texts).toEqual(['Six, build 1', 'Six, build line-honed', 'Four']);
});
