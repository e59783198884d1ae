import { describe, expect, test } from 'vitest';
import { testSheet } from '../combination/test-sheet.ts';
import { whatChanged } from '../combination/what-changed.ts';
import { type Comparison, compareCombinations, type Gain } from '../compare/index.ts';
import type { Verdict } from '../compare/model.ts';
import { type ChannelMeaning, defaultRecipe, type Pull, viewPull } from '../pull/index.ts';
import { inventedPull, inventedSweep, inventedTorque } from '../pull/invented-pull.testing.ts';
import { driveRatio } from './drive-ratio.ts';
import { explainGain } from './explain-gain.ts';
import type { About, Observation } from './observation.ts';
import { type Explained, observationsOf } from './observations-of.ts';
import { observedWithoutSupercharger } from './without-supercharger.ts';

const recipe = defaultRecipe('sae-j1349');
const CLEAR: Verdict = {
  word: 'clear',
  worthwhileRatio: 0.01,
  noDifferenceLargerThan: 0.06,
  pulls: { baseline: 2, changed: 2 },
  setUps: { baseline: 1, changed: 1 },
};

let made = 0;
interface Told {
  torque?: (rpm: number) => number;
  more?: (rpm: number) => Partial<Record<ChannelMeaning, number>>;
  pull?: Partial<Pull>;
}
function pullOf({ torque = inventedTorque, more = () => ({}), pull = {} }: Told): Pull {
  made += 1;
  const { channels } = inventedSweep({ torqueAt: torque, more });
  return inventedPull(channels, {
    id: `pull ${made}`,
    name: `Pull ${made}`,
    places: { boostTap: 'plenum' },
    ...pull,
  });
}

const CAM = {
  cam: { liftIntake: '11 mm' },
  drive: { crankPulleyDiameter: '165 mm', blowerPulleyDiameter: '84 mm' },
  supercharger: { type: 'centrifugal', stepUp: '3.6' },
};
const LONGER = { ...CAM, cam: { liftIntake: '12 mm' } };
const SMALL_PULLEY = { ...CAM, drive: { crankPulleyDiameter: '165 mm', blowerPulleyDiameter: '80 mm' } };

function explainedOf(a: Told[], b: Told[], sheets: [object, object] = [CAM, LONGER]): Explained {
  const pulls = { A: a.map(pullOf), B: b.map(pullOf) };
  const input = (key: 'A' | 'B') => ({
    key,
    combinationId: key,
    pulls: pulls[key].map((pull) => ({ pull, view: viewPull(pull, recipe) })),
  });
  const comparison = compareCombinations([input('A'), input('B')]);
  const [left, right] = sheets.map((one) => testSheet(one as typeof CAM));
  const gain: Gain = { ...comparison.gains[0]!, verdict: CLEAR };
  return {
    comparison: { ...comparison, gains: [gain] },
    gain,
    changes: whatChanged(left!, right!, []),
    sheets: new Map([
      ['A', left!],
      ['B', right!],
    ]),
    pulls: new Map([...pulls.A, ...pulls.B].map((pull) => [pull.id, pull])),
  };
}

const seen = (explained: Explained): Map<About, Observation> =>
  new Map(observationsOf(explained).map((one) => [one.about, one]));
const times = (share: number) => (rpm: number) => share * inventedTorque(rpm);

describe('what is seen', () => {
  const found = seen(
    explainedOf(
      [{ more: () => ({ boost: 60e3, fuelFlow: 0.03, lambda: 0.8, chargeTemperature: 320 }) }],
      [
        {
          torque: times(1.05),
          more: () => ({ boost: 54e3, fuelFlow: 0.0316, lambda: 0.82, chargeTemperature: 328 }),
        },
      ],
    ),
  );

  test('power, boost, fuel and charge moved, mixture within its limit did not', () => {
    expect(Object.fromEntries([...found].map(([about, { state }]) => [about, state]))).toEqual({
      power: 'up',
      shape: 'same',
      crossover: 'same',
      boost: 'down',
      fuelFlow: 'up',
      lambda: 'same',
      chargeTemperature: 'up',
      pulleyRatio: 'same',
      correction: 'same',
    });
  });

  test('in words a mechanic would say, with sizes', () => {
    expect(found.get('boost')!.text.text).toBe('Boost 6.0 kPa lower at the top, same tap.');
    expect(found.get('fuelFlow')!.text.text).toBe('Fuel flow 5.3 % higher on average.');
    expect(found.get('lambda')!.text.text).toBe('Mixture, lambda the same within 0.030.');
    expect(found.get('chargeTemperature')!.text.text).toBe('Charge 8 K warmer on average.');
    expect(found.get('pulleyRatio')!.text.text).toBe('Same drive by the sheets.');
  });
});

describe('boost', () => {
  const boosted = (pascal: (rpm: number) => number, tap = 'plenum'): Told => ({
    more: (rpm) => ({ boost: pascal(rpm) }),
    pull: { places: { boostTap: tap } },
  });
  const flat = () => 60e3;

  test('is nothing to go by where the tap moved', () => {
    expect(
      seen(explainedOf([boosted(flat)], [boosted(() => 50e3, 'before the throttle')])).has('boost'),
    ).toBe(false);
  });

  test('that falls at the top only says so', () => {
    const sags = (rpm: number) => 60e3 - Math.max(0, rpm - 5500) * 12;
    const found = seen(explainedOf([boosted(flat)], [boosted(sags)]));
    expect(found.get('boostAtTop')).toMatchObject({ state: 'down' });
    expect(seen(explainedOf([boosted(flat)], [boosted(() => 52e3)])).has('boostAtTop')).toBe(false);
  });

  test('within what a gauge lets pass is the same', () => {
    expect(seen(explainedOf([boosted(flat)], [boosted(() => 61e3)])).get('boost')?.state).toBe('same');
  });
});

test('a change within the scatter of its own repeats is none, however large its floor is', () => {
  const fuel = (flow: number): Told => ({ more: () => ({ fuelFlow: flow }) });
  // Four pulls that scatter by some 10 %: 4 % more says nothing.
  const noisy = seen(explainedOf([fuel(0.027), fuel(0.033)], [fuel(0.0282), fuel(0.0342)]));
  expect(noisy.get('fuelFlow')?.state).toBe('same');
  const steady = seen(explainedOf([fuel(0.03), fuel(0.03)], [fuel(0.0312), fuel(0.0312)]));
  expect(steady.get('fuelFlow')?.state).toBe('up');
});

describe('over engine speed', () => {
  test('the same per cent is constant, a gain at the top grows', () => {
    expect(seen(explainedOf([{}], [{ torque: times(1.04) }])).get('shape')?.state).toBe('same');
    const top = (rpm: number) => inventedTorque(rpm) * (1 + 0.00002 * (rpm - 2500));
    expect(seen(explainedOf([{}], [{ torque: top }])).get('shape')?.state).toBe('up');
  });

  test('a loss below and a gain above is a crossover with its speed', () => {
    const moved = (rpm: number) => inventedTorque(rpm) * (1 + 0.00002 * (rpm - 4500));
    const found = seen(explainedOf([{}], [{ torque: moved }])).get('crossover')!;
    expect(found.state).toBe('up');
    expect(found.text.text).toContain('below 4,500 rpm');
  });
});

describe('spark', () => {
  test('as noted, where it was not logged', () => {
    const noted = (sparkAdvance: string): Told => ({ pull: { tune: { sparkAdvance } } });
    expect(seen(explainedOf([noted('22 deg')], [noted('22°')])).get('sparkAdvance')?.state).toBe('same');
    expect(seen(explainedOf([noted('22 deg')], [noted('25 deg')])).get('sparkAdvance')).toMatchObject({
      state: 'up',
      text: { text: 'Spark 3.0° earlier as noted.' },
    });
    expect(seen(explainedOf([noted('22 deg')], [noted('by the map')])).has('sparkAdvance')).toBe(false);
  });
});

describe('the drive', () => {
  const shaft = (ratio: number): Told => ({ more: (rpm) => ({ impellerSpeed: rpm * ratio }) });

  test('the ratio of the sheet is crank over blower pulley times step-up', () => {
    // 165 / 84 · 3.6
    expect(driveRatio(testSheet(CAM))).toBeCloseTo(7.0714, 4);
    expect(driveRatio(testSheet({ drive: { crankPulleyDiameter: '165 mm' } }))).toBeNull();
  });

  test('a smaller pulley turns it faster, and the belt kept it', () => {
    const found = seen(explainedOf([shaft(7)], [shaft(7 * (84 / 80))], [CAM, SMALL_PULLEY]));
    expect(found.get('pulleyRatio')).toMatchObject({ state: 'up', change: expect.closeTo(0.05, 6) });
    expect(found.get('impellerSpeed')?.state).toBe('up');
    expect(found.get('slip')?.state).toBe('same');
  });

  test('the same pulley and a slower shaft is slip; without the shaft nothing is said of it', () => {
    expect(seen(explainedOf([shaft(7)], [shaft(6.8)])).get('slip')).toMatchObject({
      state: 'up',
      change: expect.closeTo(1 - 6.8 / 7, 4),
    });
    expect(seen(explainedOf([{}], [{}])).has('slip')).toBe(false);
  });
});

describe('through the repeats', () => {
  const charged = (kelvin: number, minute: number): Told => ({
    more: () => ({ chargeTemperature: kelvin }),
    pull: { recordedAt: `2026-03-14T10:${minute}:00+01:00` },
  });

  test('charge that warms with every pull, in the order they were made', () => {
    const found = seen(explainedOf([{}], [charged(332, 30), charged(320, 10), charged(326, 20)]));
    expect(found.get('chargeTrend')).toMatchObject({ state: 'up' });
    const back = seen(explainedOf([{}], [charged(332, 10), charged(320, 20), charged(330, 30)]));
    expect(back.has('chargeTrend')).toBe(false);
  });

  test('a trend of power as the comparison judged it', () => {
    const explained = explainedOf([{}], [{}]);
    const trend = { group: 'B', setUp: null, pulls: 4, perPull: -0.006, low: -0.01, high: -0.002 };
    const withTrend = (state: 'seen' | 'cannot-tell'): Explained => ({
      ...explained,
      comparison: { ...explained.comparison, trends: [{ ...trend, state }] } satisfies Comparison,
    });
    expect(seen(withTrend('seen')).get('trend')).toMatchObject({
      state: 'down',
      text: { text: 'Power falls 0.6 % with every pull of B.' },
    });
    expect(seen(withTrend('cannot-tell')).has('trend')).toBe(false);
  });
});

describe('a whole gain', () => {
  const blown = (boost: number, fuelFlow: number, torque: number): Told => ({
    torque: times(torque),
    more: () => ({ boost, fuelFlow, lambda: 0.8, chargeTemperature: 320 }),
    pull: { tune: { sparkAdvance: '22 deg' } },
  });
  const explained = explainedOf([blown(69.3e3, 0.03, 1)], [blown(62.4e3, 0.0315, 1.05)]);

  test('of a cam: breathes better, slip not excluded with how much of it', () => {
    const given = explainGain(explained);
    expect(given.likeliest?.id).toBe('breathes-better');
    // 99 kPa of air: a pressure ratio of 1.7, and a tenth less boost: 10 / 2.39.
    expect(given.notExcluded.map(({ id }) => id)).toEqual(['belt-slip']);
    expect(given.notExcluded[0]!.text.text).toContain('About 4.2 % of slip');
    expect(given.wouldSettle?.text).toContain('shaft-speed');
  });

  test('that nobody judged is not explained', () => {
    expect(explainGain({ ...explained, gain: { ...explained.gain, verdict: null } }).silent).not.toBeNull();
  });

  test('beside the same change without a supercharger, more or less than the pressure ratio makes of it', () => {
    const bare = ({ cam }: typeof CAM) => testSheet({ cam });
    const sheets = new Map([...explained.sheets, ['C', bare(CAM)], ['D', bare(LONGER)]] as const);
    const baseline = explained.comparison.combinations[0]!;
    const scaled = (key: string, share: number) => {
      const { mean, pulls } = baseline.channels.get('power')!;
      const power = {
        mean,
        pulls: pulls.map((one) => ({ ...one, values: one.values.map((watt) => share * watt) })),
      };
      return { ...baseline, key, channels: new Map([['power', power]] as const) };
    };
    // 5 % were gained boosted. Bare, 1, 3 and 5 % of the boosted power times 1.7 are 1.7, 5.1 and 8.5 %.
    const stateWith = (bareGain: number) => {
      const combinations = [
        ...explained.comparison.combinations,
        scaled('C', 0.6),
        scaled('D', 0.6 + bareGain),
      ];
      return observedWithoutSupercharger(
        { ...explained.comparison, combinations },
        explained.gain,
        sheets,
        1.7,
      )[0]?.state;
    };
    expect([0.01, 0.03, 0.05].map(stateWith)).toEqual(['up', 'same', 'down']);
    expect(observedWithoutSupercharger(explained.comparison, explained.gain, explained.sheets, 1.7)).toEqual(
      [],
    );
  });
});
