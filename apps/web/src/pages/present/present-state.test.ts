import type { CursorTable } from '@pullbook/views';
import type { PresentedStep } from '@pullbook/views/publish';
import { expect, test } from 'vitest';
import { type PresentAct, presented, startAt } from './present-state.ts';

const table: CursorTable = { at: [3000, 3500, 4000, 4500], columns: [], rows: [], start: 2 };
const step = (id: string, cursor: CursorTable | null): PresentedStep => ({
  id,
  seconds: 4,
  drawingShare: 0.5,
  drawn: 'all',
  cursor,
  still: {
    headline: id,
    subline: '',
    body: { kind: 'words', paragraphs: [] },
    footer: [],
    warning: null,
    signature: null,
    alternative: '',
  },
});
const steps = [step('asked', null), step('baseline', table), step('gain', table)];
const after = (...acts: PresentAct[]) =>
  acts.reduce((state, act) => presented(state, act, steps), startAt(1));

test('a step further and back, never beyond the first and the last, each drawn anew', () => {
  const on = after({ kind: 'step', by: 1 });
  expect(on).toMatchObject({ step: 2, drawing: 1 });
  expect(presented(on, { kind: 'step', by: 1 }, steps)).toBe(on);
  expect(after({ kind: 'go', to: 99 }).step).toBe(2);
  expect(after({ kind: 'go', to: -3 }).step).toBe(0);
});

test('out of the dark a key shows the same step first', () => {
  const dark = after({ kind: 'dark' });
  expect(dark.isDark).toBe(true);
  expect(presented(dark, { kind: 'step', by: 1 }, steps)).toMatchObject({ step: 1, isDark: false });
});

test('the cursor goes node by node and stops at the ends; a step without curves has none', () => {
  expect(after({ kind: 'node', by: 1 }).pointer).toBe(4000);
  const onTwice: PresentAct[] = [
    { kind: 'node', by: 1 },
    { kind: 'node', by: 1 },
    { kind: 'node', by: 1 },
  ];
  expect(after(...onTwice).pointer).toBe(4500);
  expect(after({ kind: 'go', to: 0 }, { kind: 'node', by: 1 }).pointer).toBeNull();
});

test('two speeds are held and stay over a step, a third takes the place of the first, and they are let go', () => {
  const point = (at: number | null): PresentAct => ({ kind: 'point', at });
  const two = after(point(3000), { kind: 'hold' }, point(4000), { kind: 'hold' });
  expect(two.held).toEqual([3000, 4000]);
  expect(presented(two, { kind: 'step', by: 1 }, steps)).toMatchObject({ held: [3000, 4000], pointer: null });
  const third = [point(4500), { kind: 'hold' } as const].reduce(
    (state, act) => presented(state, act, steps),
    two,
  );
  expect(third.held).toEqual([4000, 4500]);
  expect(presented(third, { kind: 'hold' }, steps).held).toEqual([4000]);
  expect(presented(presented(third, point(null), steps), { kind: 'hold' }, steps).held).toEqual([]);
});
