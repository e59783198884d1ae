import { expect, test } from 'vitest';
import { checkedRunningOrder } from './running-order.ts';

const faultsOf = (given: unknown) => checkedRunningOrder(given).remarks.map(({ message }) => message);

test('what a step does not say is as worked out', () => {
  const steps = [{ id: 'why' }, { id: 'gain', isShown: false, title: ' The answer ', seconds: 4.5 }];
  expect(checkedRunningOrder({ steps })).toMatchObject({
    ok: true,
    value: {
      steps: [
        { id: 'why', isShown: true, title: null, seconds: null },
        { id: 'gain', isShown: false, title: 'The answer', seconds: 4.5 },
      ],
      speed: 1,
    },
  });
  expect(checkedRunningOrder({})).toMatchObject({ ok: true, value: { steps: [], speed: 1 } });
  expect(checkedRunningOrder({ steps: [{ id: 'why', title: '  ' }] })).toMatchObject({
    value: { steps: [{ title: null }] },
  });
});

test.each([
  ['no order', null, /is \{ steps: \[ … \], speed \}/],
  ['no list', { steps: 'why' }, /steps is a list/],
  ['a step unknown', { steps: [{ id: 'finale' }] }, /"finale"; the steps are asked, combination, baseline/],
  ['a step without a name', { steps: [7] }, /Step 1 .* no name/],
  ['named twice', { steps: [{ id: 'why' }, { id: 'why' }] }, /"why" is named twice/],
  ['too short', { steps: [{ id: 'why', seconds: 0.2 }] }, /"why" is 0\.2 s; it may be 0\.5 to 60 s/],
  ['too long', { steps: [{ id: 'why', seconds: 61 }] }, /"why" is 61 s/],
  ['no number', { steps: [{ id: 'why', seconds: 'four' }] }, /"why" is not a number/],
  ['not finite', { steps: [{ id: 'why', seconds: Number.NaN }] }, /"why" is NaN s/],
  [
    'a title too long',
    { steps: [{ id: 'why', title: 'x'.repeat(201) }] },
    /201 letters long; it may have up to 200/,
  ],
  ['a title that is none', { steps: [{ id: 'why', title: 7 }] }, /is no text/],
  ['shown perhaps', { steps: [{ id: 'why', isShown: 'yes' }] }, /true or false/],
  ['too fast', { speed: 9 }, /The speed is 9 times; it may be 0\.25 to 4 times/],
])('%s is refused with what is allowed', (_, given, says) => {
  const faults = faultsOf(given);
  expect(faults).toHaveLength(1);
  expect(faults[0]).toMatch(says);
});
