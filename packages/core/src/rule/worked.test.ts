import { expect, test } from 'vitest';
import { fromInside, toInside } from '../quantity/index.ts';
import { compressorEfficiency, meanEffectivePressure, remarksBeside, speakerOf } from './index.ts';
import { ofPull, sheetOf, tablePull } from './rules.testing.ts';

test('mean effective pressure is 150.8 · lb-ft / in³, in psi', () => {
  // Four-stroke: 4π · 12 in/ft = 150.796 psi·in³/lb-ft; 400 lb-ft of 350 in³.
  const pascal = meanEffectivePressure(toInside(400, 'lb-ft', 'torque'), toInside(350, 'in³', 'volume'));
  expect(fromInside(pascal, 'psi', 'pressureDifference')).toBeCloseTo((150.796 * 400) / 350, 2);
});

test('an ideal compressor heats by π^(2/7): 300 K to 365.7 K at 2', () => {
  // 2^(2/7) = 1.21901, worked by hand from ln 2 = 0.693147.
  expect(compressorEfficiency(300, 300 * 1.21901, 2)).toBeCloseTo(1, 4);
  expect(compressorEfficiency(300, 390, 2)).toBeCloseTo(65.703 / 90, 4);
});

const centrifugal = sheetOf({ supercharger: { type: 'centrifugal' } });
/** A belt that does not slip: boost with the square of speed, 8 % short of it at the top as the engine takes more air. */
const goodBelt = (speed: number) =>
  60e3 * (speed / 6500) ** 2 * (1 - 0.08 * Math.max(0, (speed - 5200) / 1300));

test('boost that falls short of its trend is asked about, never more than a note, and says what would settle it', () => {
  const found = ofPull(tablePull({ boost: goodBelt }), centrifugal).filter((one) => one.ruleId === 'V13');
  expect(found).toMatchObject([{ level: 'note' }]);
  expect(found[0]!.remark.message).toMatch(/accuses no belt.+settle.+shaft/);
});

test('the shop’s threshold is used where it may be set, and nowhere else', () => {
  const speaker = speakerOf('pull p', { 'V17.duty': 0.9, 'V01.share': 0.5, 'V18.share': Number.NaN });
  expect(speaker.limit('V17.duty')).toBe(0.9);
  expect(speaker.limit('V01.share')).toBe(0.005);
  expect(speaker.limit('V18.share')).toBe(0.1);
});

test('a picture whose axes are off is told so once, not as units too', () => {
  const pull = tablePull(
    { power: (speed) => (1.03 * (2 * Math.PI * speed) * (400 - 2e-5 * (speed - 4500) ** 2)) / 60 },
    { origin: 'read off a picture' },
  );
  const findings = ofPull(pull);
  expect(findings.map((one) => one.ruleId)).toContain('V38');
  expect(findings.map((one) => one.ruleId)).not.toContain('V01');
  const remarks = [{ code: 'power-is-not-torque-times-speed' }, { code: 'lag-set' }];
  expect(remarksBeside(remarks, findings)).toEqual([{ code: 'lag-set' }]);
  expect(remarksBeside(remarks, [])).toEqual(remarks);
});
