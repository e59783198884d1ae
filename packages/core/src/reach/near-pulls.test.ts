import { expect, test } from 'vitest';
import type { CombinationSheet } from '../combination/index.ts';
import type { Rung } from './model.ts';
import { nearPullsOf } from './near-pulls.ts';

const sheet = (pulley: string): CombinationSheet => ({
  schemaVersion: 1,
  name: pulley,
  sections: {
    drive: {
      blowerPulleyDiameter: {
        text: `${pulley} mm`,
        value: Number(pulley) / 1000,
        kind: 'length',
        origin: 'data sheet',
      },
    },
  },
});

test('what separates a pulled combination from a rung are the lines of their sheets; a kept rung has no sheet', () => {
  const made = (pulley: string) => ({ match: null, sheet: sheet(pulley), supply: {} as never });
  const rungs = [
    { id: 'smaller', made: made('80') },
    { id: 'same', made: made('84') },
    { id: 'kept', made: null },
  ] as unknown as Rung[];
  const near = { combinationId: 'c', name: 'pulled', pullIds: ['p'], power: 370e3, isSameEngine: true };
  const [one] = nearPullsOf([{ ...near, side: 'below', sheet: sheet('84') }], rungs);
  expect(Object.keys(one!.separates)).toEqual(['smaller', 'same']);
  expect(one!.separates.smaller).toEqual([expect.objectContaining({ before: '84 mm', after: '80 mm' })]);
  expect(one!.separates.same).toEqual([]);
  expect(one).not.toHaveProperty('sheet');
});
