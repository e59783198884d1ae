import { describe, expect, test } from 'vitest';
import { type MatchInput, solveMatch } from '../airpath/index.ts';
import { plainInput } from '../airpath/match/match-input.testing.ts';
import { defaultRecipe, viewPull } from '../pull/index.ts';
import { findingsOfMatch, findingsOfPull } from './index.ts';
import { fitWithBoostOff, ofMatch } from './match-cases.testing.ts';
import { sheetOf, tablePull } from './rules.testing.ts';

const of = (findings: ReturnType<typeof ofMatch>, id: string) =>
  findings.filter(({ ruleId }) => ruleId === id);

describe('impeller', () => {
  test('at zero slip, at the limit of the engine and the margin: 7,000 r/min x 7 is 49,000', () => {
    const drive = { slip: 0.03, maximumImpellerSpeedRpm: 49_500 };
    const [found] = of(ofMatch({ drive }), 'V20');
    // 6,800 + 200 r/min, pulleys 2, step-up 3.5, nothing off for slip.
    expect(found).toMatchObject({ value: 49_000, threshold: 49_500, level: 'caution' });
    expect(found!.remark.message).toMatch(/6,800 rpm and 200 rpm over it, without slip.+49,000 rpm, 99 %/);
    expect(of(ofMatch({ drive: { maximumImpellerSpeedRpm: 48_900 } }), 'V20')[0]!.level).toBe('alarm');
    expect(of(ofMatch({ drive: { maximumImpellerSpeedRpm: 60_000 } }), 'V20')).toEqual([]);
  });

  test('without the engine’s limit the highest speed of the match is taken, and said so', () => {
    const drive = { engineSpeedLimitRpm: null, maximumImpellerSpeedRpm: 47_000 };
    const [found] = of(ofMatch({ drive }), 'V20');
    expect(found!.value).toBe(6700 * 7);
    expect(found!.remark.message).toContain('no limit of the engine is on the sheet');
  });

  test('without the maker’s limit the speed is told and the limit asked for', () => {
    const [found] = of(ofMatch({ drive: { maximumImpellerSpeedRpm: null } }), 'V20');
    expect(found).toMatchObject({ value: 49_000, threshold: null, level: 'note' });
  });
});

describe('slip by the fitted match', () => {
  const GOOD = fitWithBoostOff((speed) => 0.01 * Math.sin(speed / 300));
  const SLIPPING = fitWithBoostOff((speed) => (speed < 5600 ? 0.01 : -0.12 * ((speed - 5600) / 900)));

  test('boost that sags at the top alone is found, of its pull, and says what would settle it', () => {
    const [found] = of(ofMatch({}, SLIPPING), 'V13');
    expect(found).toMatchObject({ subject: 'pull p', level: 'caution', kind: 'ratio' });
    expect(found!.value).toBeLessThan(-0.06);
    expect(found!.remark.message).toMatch(/fitted.+settle.+shaft/);
  });

  test('a good belt is not accused, nor one whose whole curve stands off', () => {
    expect(of(ofMatch({}, GOOD), 'V13')).toEqual([]);
    expect(
      of(
        ofMatch(
          {},
          fitWithBoostOff(() => -0.1),
        ),
        'V13',
      ),
    ).toEqual([]);
  });

  /** Boost with the square of speed, 8 % short of it at the top as the engine takes more air. */
  const boost = (speed: number) =>
    60e3 * (speed / 6500) ** 2 * (1 - 0.08 * Math.max(0, (speed - 5200) / 1300));
  const pull = tablePull({ boost }, { id: 'p' });
  const sheet = sheetOf({ supercharger: { type: 'centrifugal' } });
  const view = viewPull(pull, defaultRecipe('sae-j1349'));

  test('on the pull’s page the fit stands in place of the trend, which accuses good belts', () => {
    expect(of(findingsOfPull(pull, view, { sheet }), 'V13')).toHaveLength(1);
    expect(of(findingsOfPull(pull, view, { sheet, fit: GOOD }), 'V13')).toEqual([]);
    expect(of(findingsOfPull(pull, view, { sheet, fit: SLIPPING }), 'V13')).toHaveLength(1);
    expect(
      of(findingsOfPull(pull, view, { sheet, fit: fitWithBoostOff(() => 0, 'another') }), 'V13'),
    ).toHaveLength(1);
  });

  test('shaft speed goes first', () => {
    const geared = sheetOf({
      supercharger: { type: 'centrifugal', stepUp: '4' },
      drive: { crankPulleyDiameter: '190 mm', blowerPulleyDiameter: '95 mm' },
    });
    const measured = tablePull({ boost, impellerSpeed: (speed) => speed * 8 * 0.99 }, { id: 'p' });
    const seen = viewPull(measured, defaultRecipe('sae-j1349'));
    expect(of(findingsOfPull(measured, seen, { sheet: geared, fit: SLIPPING }), 'V13')).toEqual([]);
  });
});

describe('heat and losses', () => {
  test('an efficiency of 55 % is below 60, and hotter air leaves by as much', () => {
    const found = of(ofMatch({ compressor: { constantEfficiency: 0.55 } }), 'V14');
    expect(found[0]).toMatchObject({ kind: 'ratio', threshold: 0.6 });
    expect(found[0]!.value).toBeCloseTo(0.55, 9);
    // 1.8 from 298 K at 0.35: 298 (1.8^0.2857 - 1) / 0.35 is 155 K of rise, 180 °C; 350 °F is 177 °C.
    const hot = of(ofMatch({ compressor: { constantEfficiency: 0.3 } }), 'V14');
    expect(hot.map(({ kind }) => kind)).toContain('temperature');
    expect(of(ofMatch({ compressor: { constantEfficiency: 0.7 } }), 'V14')).toEqual([]);
  });

  test('a core that takes more than 2 psi is named, one that takes 1 psi is not', () => {
    const cooler = (pressureDifference: number): MatchInput['cooler'] => ({
      by: 'water',
      effectiveness: 0.7,
      coolantTemperature: 298,
      loss: { pressureDifference, atFlow: 0.6, atDensity: 1.6 },
    });
    const [found] = of(ofMatch({ cooler: cooler(22_000) }), 'V15');
    expect(found!.value).toBeGreaterThan(13_790);
    expect(of(ofMatch({ cooler: cooler(7000) }), 'V15')).toEqual([]);
  });

  test('a boost index no engine reaches is asked about', () => {
    expect(of(ofMatch({ work: { factor: 1.3 } }), 'V16')[0]!.value).toBeGreaterThan(1.08);
    expect(of(ofMatch({ work: { factor: 0.6 } }), 'V16')[0]!.value).toBeLessThan(0.72);
  });
});

test('a sound match has nothing said of it', () => {
  expect(
    ofMatch({ swallowing: { scale: 1.1 } }).map(({ ruleId, remark }) => `${ruleId} ${remark.message}`),
  ).toEqual([]);
});

test('the shop’s own threshold is used', () => {
  const input = plainInput();
  const found = findingsOfMatch('combination c', input, solveMatch(input), {
    thresholds: { 'V43.share': 0.01 },
  });
  expect(of(found, 'V43')).toMatchObject([{ threshold: 0.01 }]);
});

test('a match with no solution anywhere says so and nothing that cannot be read', () => {
  const found = ofMatch({ drive: { pulleyRatio: Number.NaN } });
  for (const { remark } of found) expect(remark.message).not.toMatch(/NaN|undefined|null|Infinity/);
});

describe('where the match lies', () => {
  const messages = (found: ReturnType<typeof ofMatch>) => found.map(({ remark }) => remark.message);

  test('above the limit on the sheet the impeller is held at the higher speed', () => {
    const drive = { engineSpeedLimitRpm: 5000, maximumImpellerSpeedRpm: 48_000 };
    const [found] = of(ofMatch({ drive }), 'V20');
    // The match goes to 6,500 r/min; 200 r/min over that, times 7.
    expect(found).toMatchObject({ value: 6700 * 7, level: 'caution' });
    expect(found!.remark.message).toContain('above the engine’s limit of 5,000 rpm');
  });

  test('surge is an alarm where its edge was measured, and a caution where it is estimated', () => {
    const map = plainInput().compressor.map;
    // Twice the flow of the lines: the engine takes too little for this compressor.
    const surgesOn = (changes: Partial<typeof map>) => {
      const compressor = { map: { ...map, ...changes }, flowScale: 2 };
      return of(ofMatch({ compressor }), 'V42').find(({ input }) => input.includes('surge edge'))!;
    };
    const measured = surgesOn({ form: 'points', leftEnd: 'surge' });
    expect(measured).toMatchObject({ level: 'alarm' });
    expect(measured.remark.message).toContain('Do not pull there');
    const guessed = surgesOn({ form: 'rated', leftEnd: 'not known' });
    expect(guessed).toMatchObject({ level: 'caution' });
    expect(guessed.remark.message).toContain('Nobody measured where this compressor surges');
  });

  test('a loss that eats the boost is said with the pressure and what to look at', () => {
    const inletLoss = { pressureDifference: 90_000, atFlow: 0.3, atDensity: 1.17 };
    const said = messages(of(ofMatch({ inletLoss }), 'V42')).find((one) => one.includes('in the way'));
    expect(said).toMatch(/[1-9][\d.]* kPa below ambient at [\d,]+ rpm.+losses/);
    const past = ofMatch({ inletLoss, bypass: { state: 'open', leak: 0 } });
    expect(messages(past).filter((one) => one.includes('in the way'))).toEqual([]);
  });
});
