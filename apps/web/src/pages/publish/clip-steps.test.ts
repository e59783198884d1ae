import type { ClipDescription } from '@pullbook/charts';
import { expect, test } from 'vitest';
import { startOfStep, stepAt } from './clip-steps.ts';

const clip = {
  steps: [
    { id: 'asked', seconds: 3 },
    { id: 'gain', seconds: 4.5 },
    { id: 'why', seconds: 2 },
  ],
} as ClipDescription;

test('a step begins where those before it end, and is there from its beginning on', () => {
  expect([0, 1, 2, 3].map((place) => startOfStep(clip, place))).toEqual([0, 3, 7.5, 9.5]);
  expect([0, 2.99, 3, 7.49, 7.5, 9.5].map((at) => stepAt(clip, at))).toEqual([0, 0, 1, 1, 2, 2]);
});

test('a clip without steps has none to be in', () => {
  expect(stepAt({ steps: [] }, 0)).toBe(0);
});
