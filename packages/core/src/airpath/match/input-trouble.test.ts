import { expect, test } from 'vitest';
import type { MatchInput } from '../model.ts';
import { troubleOfInput } from './input-trouble.ts';
import { plainInput } from './match-input.testing.ts';

const base = plainInput();
const codes = (changes: Partial<MatchInput>) =>
  troubleOfInput({ ...base, ...changes }).map(({ code }) => code);

test('a sound input has no trouble', () => {
  expect(troubleOfInput(base)).toEqual([]);
});

test.each<[string, Partial<MatchInput>, string]>([
  ['a pulley of zero', { drive: { ...base.drive, pulleyRatio: 0 } }, 'drive-without-ratio'],
  ['a slip in per cent', { drive: { ...base.drive, slip: 2 } }, 'share-out-of-range'],
  [
    'a cooler of 80 where 0.8 was meant',
    {
      cooler: {
        by: 'air',
        effectiveness: 80,
        coolantTemperature: null,
        loss: { pressureDifference: 0, atFlow: 1, atDensity: 1 },
      },
    },
    'share-out-of-range',
  ],
  ['no displacement', { displacement: 0 }, 'displacement-not-above-zero'],
  ['not a number', { displacement: Number.NaN }, 'displacement-not-above-zero'],
  ['a compression ratio of 0.9', { compressionRatio: 0.9 }, 'compression-ratio-out-of-range'],
  ['a gas without heat', { gas: { specificHeat: 200, gasConstant: 287 } }, 'gas-out-of-range'],
  [
    'a loss that gives pressure',
    { pipeLoss: { pressureDifference: -5, atFlow: 1, atDensity: 1 } },
    'loss-out-of-range',
  ],
  ['an uneven baseline', { baseline: { ...base.baseline, airFlow: [0.1, 0.2] } }, 'baseline-uneven'],
  [
    'a baseline without air at one speed',
    {
      baseline: {
        ...base.baseline,
        airFlow: base.baseline.airFlow.map((flow, node) => (node === 2 ? 0 : flow)),
      },
    },
    'baseline-out-of-range',
  ],
  [
    'friction that is not known',
    { baseline: { ...base.baseline, frictionPower: base.baseline.frictionPower.map(() => Number.NaN) } },
    'baseline-out-of-range',
  ],
  [
    'engine speeds that fall',
    { baseline: { ...base.baseline, engineSpeedRpm: base.baseline.engineSpeedRpm.toReversed() } },
    'baseline-out-of-range',
  ],
  ['an empty baseline', { baseline: { ...base.baseline, engineSpeedRpm: [] } }, 'baseline-without-speeds'],
])('%s is named', (_, changes, code) => {
  expect(codes(changes)).toContain(code);
});

test('the message says where and what is allowed', () => {
  const [remark] = troubleOfInput({ ...base, drive: { ...base.drive, slip: 2 } });
  expect(remark!.message).toMatch(/slip.*200.*between 0.*90/);
});
