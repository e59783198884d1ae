import { expect, test } from 'vitest';
import { type InventedCombination, inventedAnswer } from '../test-answer.ts';
import { leaving } from './leaving.ts';

const base: InventedCombination = { shortName: 'base cam', pulls: 2, power: (rpm) => 0.07 * rpm };

test('what would leave the shop is named: counted pulls with who may see them, and what stays with why', () => {
  const answer = inventedAnswer([base, { ...base, shortName: 'longer cam' }]);
  const pulls = answer.trial.pulls.map((one) =>
    one.pullId === 'B2' ? { ...one, role: 'rejected' as const, reason: 'throttle lifted' } : one,
  );
  const own = answer.pulls.get('A2')!;
  answer.pulls.set('A2', {
    ...own,
    audience: { who: 'customer', notBefore: null },
    operator: 'somebody',
    fileHash: 'abc',
  });
  answer.pulls.set('B2', { ...answer.pulls.get('B2')!, audience: { who: 'shop', notBefore: null } });
  const shown = leaving({ ...answer, trial: { ...answer.trial, pulls } });
  expect(shown.pulls.map(({ name, audience }) => `${name}: ${audience}`)).toEqual([
    'Pull A1: everyone',
    'Pull A2: the customer whose engine it is',
    'Pull B1: everyone',
  ]);
  expect(shown.leftOut).toEqual([{ id: 'B2', name: 'Pull B2', why: 'rejected: throttle lifted' }]);
  expect(shown.heldBack).toEqual(['“Pull A2” may be seen by the customer whose engine it is.']);
  expect(shown.heldBackInBundle).toEqual(['“Pull B2” may be seen by the shop alone.']);
  expect(shown.contents).toContain('Curves and figures of 3 pulls, with weather, days and cells.');
  expect(shown.contents).toContain('In a bundle: also Pull B2, which does not count, with the curves.');
  expect(shown.contents).toContain('In a bundle: who made 1 pull.');
  expect(shown.contents).toContain('In a bundle: 1 original file with all that the loggers wrote into them.');
  expect(shown.contents.join(' ')).toContain('the sheets of base cam and longer cam');
});
