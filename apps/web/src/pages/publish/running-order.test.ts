import type { ShownRunningOrder } from '@pullbook/views/publish';
import { expect, test } from 'vitest';
import {
  changedStep,
  draftOf,
  movedStep,
  orderFrom,
  sameOrder,
  stepsWithoutSeconds,
} from './running-order.ts';

const shown: ShownRunningOrder = {
  speed: 1,
  seconds: 7,
  steps: [
    {
      id: 'asked',
      name: 'What is asked',
      isShown: true,
      whyNot: '',
      title: 'Asked',
      ownTitle: 'Asked',
      seconds: 3,
      ownSeconds: 3,
    },
    {
      id: 'gain',
      name: 'The gain',
      isShown: true,
      whyNot: '',
      title: 'Gain',
      ownTitle: 'Gain',
      seconds: 4,
      ownSeconds: 4,
    },
    {
      id: 'boost',
      name: 'Boost',
      isShown: false,
      whyNot: 'No boost was read.',
      title: 'Boost',
      ownTitle: 'Boost',
      seconds: 0,
      ownSeconds: 0,
    },
  ],
};
const ids = (of: { steps: { id: string }[] }) => of.steps.map(({ id }) => id);

test('what stands as worked out is kept as nothing of its own, so that it follows the answer', () => {
  expect(orderFrom(draftOf(shown)).steps).toEqual([
    { id: 'asked', isShown: true, title: null, seconds: null },
    { id: 'gain', isShown: true, title: null, seconds: null },
    { id: 'boost', isShown: false, title: null, seconds: null },
  ]);
});

test('a title and seconds of its own are kept; an emptied title goes back to what was worked out', () => {
  const own = changedStep(draftOf(shown), 1, { title: ' What it gives ', seconds: '5,5' });
  expect(orderFrom(own).steps[1]).toEqual({
    id: 'gain',
    isShown: true,
    title: 'What it gives',
    seconds: 5.5,
  });
  expect(orderFrom(changedStep(own, 1, { title: ' ' })).steps[1]!.title).toBeNull();
});

test('a step moves one place, and not beyond either end', () => {
  const draft = draftOf(shown);
  expect(ids(movedStep(draft, 1, -1))).toEqual(['gain', 'asked', 'boost']);
  expect(ids(movedStep(draft, 1, 1))).toEqual(['asked', 'boost', 'gain']);
  expect(movedStep(draft, 0, -1)).toBe(draft);
  expect(movedStep(draft, 2, 1)).toBe(draft);
});

test('seconds that are no number are found before they are sent; of a step that has nothing to show they are not asked', () => {
  const draft = draftOf(shown);
  expect(stepsWithoutSeconds(draft)).toEqual([]);
  for (const typed of ['', 'soon', '0', '-2']) {
    expect(ids({ steps: stepsWithoutSeconds(changedStep(draft, 0, { seconds: typed })) })).toEqual(['asked']);
  }
});

test('a blank more in a title is no change', () => {
  const draft = draftOf(shown);
  expect(sameOrder(draft, changedStep(draft, 0, { title: 'Asked ' }))).toBe(true);
  expect(sameOrder(draft, changedStep(draft, 0, { title: 'Asked?' }))).toBe(false);
});
