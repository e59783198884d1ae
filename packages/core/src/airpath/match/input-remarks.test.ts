import { expect, test } from 'vitest';
import type { MatchInput } from '../model.ts';
import { inputRemarks } from './input-remarks.ts';
import { plainInput } from './match-input.testing.ts';

const base = plainInput();
const codesOf = (changes: Partial<MatchInput>) =>
  inputRemarks({ ...base, ...changes }).map(({ code }) => code);
const airTimes = (factor: number) => ({
  baseline: { ...base.baseline, airFlow: base.baseline.airFlow.map((flow) => factor * flow) },
});

test('a sound input has nothing said of it', () => expect(codesOf({})).toEqual([]));

test('pounds a minute read as kilograms a second, and a decimal point gone astray, are named by speed', () => {
  expect(codesOf(airTimes(132.28))).toEqual(['baseline-filling-odd', 'baseline-work-odd']);
  expect(codesOf(airTimes(0.1))).toEqual(['baseline-filling-odd', 'baseline-work-odd']);
  const [first] = inputRemarks({ ...base, ...airTimes(10) });
  expect(first).toMatchObject({ level: 'caution' });
  expect(first!.message).toMatch(/^At [\d,]+ rpm .+% of its swept volume.+Check the air flow/);
});

test('one row that is off is found among sound ones', () => {
  const airFlow = base.baseline.airFlow.map((flow, node) => (node === 3 ? 3 * flow : flow));
  const [first] = inputRemarks({ ...base, baseline: { ...base.baseline, airFlow } });
  expect(first!.message).toContain(`${base.baseline.engineSpeedRpm[3]!.toLocaleString('en')} rpm`);
});

test('one cylinder written for eight fills eight times', () => {
  expect(codesOf({ displacement: base.displacement / 8 })).toEqual(['baseline-filling-odd']);
});

test('air reckoned from power says nothing of their ratio', () => {
  const { baseline } = airTimes(0.5);
  const codes = codesOf({ baseline: { ...baseline, airBasis: 'torque and efficiency' } });
  expect(codes).not.toContain('baseline-work-odd');
});

test('pulleys that step down, and a limit below the speeds matched', () => {
  expect(codesOf({ drive: { ...base.drive, pulleyRatio: 0.45 } })).toEqual(['pulleys-step-down']);
  expect(codesOf({ drive: { ...base.drive, engineSpeedLimitRpm: 5000 } })).toEqual(['limit-below-match']);
});
