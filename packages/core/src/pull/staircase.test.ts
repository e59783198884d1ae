import { describe, expect, test } from 'vitest';
import { acceptanceWindow } from './acceptance-window.ts';
import { inventedChannel, inventedPull, inventedSweep } from './invented-pull.testing.ts';
import { defaultRecipe } from './recipe.ts';
import { viewPull } from './view-pull.ts';

/** N·m, and what an invented engine does while the brake settles: far from it. */
const torqueAt = (rpm: number): number => 400 - ((rpm - 4200) / 300) ** 2;

interface Steps {
  speeds: readonly number[];
  holdS?: number;
  wayS?: number;
  hz?: number;
  noiseRpm?: number;
  /** Slow swing of the brake, seven times in ten seconds. */
  huntRpm?: number;
}

/** A step test logged throughout, idling before and after; torque is 20 % low for 0.8 s after each step. */
function steps({ speeds, holdS = 4, wayS = 1, hz = 20, noiseRpm = 4, huntRpm = 0 }: Steps) {
  const rows: { speed: number; torque: number }[] = [];
  const noise = (row: number) =>
    noiseRpm * Math.sin(row * 2.399) + huntRpm * Math.sin((1.4 * Math.PI * row) / hz);
  const add = (
    seconds: number,
    speed: (share: number) => number,
    torque: (rpm: number, s: number) => number,
  ) => {
    const count = Math.round(seconds * hz);
    for (let at = 0; at < count; at++) {
      const rpm = speed(at / count);
      rows.push({ speed: rpm + noise(rows.length), torque: torque(rpm, at / hz) });
    }
  };
  add(
    3,
    () => 900,
    () => 4,
  );
  let before = 900;
  for (const target of speeds) {
    const from = before;
    add(
      wayS,
      (share) => from + (target - from) * share,
      () => 150,
    );
    add(
      holdS,
      () => target,
      (rpm, s) => (s < 0.8 ? 0.8 : 1) * torqueAt(rpm),
    );
    before = target;
  }
  add(
    1,
    (share) => before - 1000 * share,
    () => -20,
  );
  return [
    inventedChannel(
      'time',
      rows.map((_, row) => row / hz),
    ),
    inventedChannel(
      'engineSpeed',
      rows.map(({ speed }) => speed),
    ),
    inventedChannel(
      'torque',
      rows.map(({ torque }) => torque),
    ),
  ];
}

const EVERY_250 = Array.from({ length: 13 }, (_, step) => 3000 + 250 * step);
const view = (channels: ReturnType<typeof steps>, windowRpm: [number, number] | null = null) =>
  viewPull(inventedPull(channels), { ...defaultRecipe('observed'), windowRpm });
const codes = ({ remarks }: { remarks: { code: string }[] }) => remarks.map(({ code }) => code);

describe('a step test logged throughout', () => {
  test('is one point a held speed, at the torque of its settled rows', () => {
    const { curve, window } = view(steps({ speeds: EVERY_250 }));
    expect(curve?.kindOfRows).toBe('points');
    expect(curve?.engineSpeedRpm).toHaveLength(13);
    EVERY_250.forEach((rpm, at) => {
      expect(Math.abs(curve!.engineSpeedRpm[at]! - rpm)).toBeLessThan(1);
      // The rows of the first 0.8 s are a fifth low: one of sixty in the mean would show as 0.3 %.
      expect(Math.abs(curve!.channels.get('torque')![at]! / torqueAt(rpm) - 1)).toBeLessThan(0.001);
    });
    expect(window?.sweepRateRpmPerS).toBeNull();
    expect(window?.windowRpm.map(Math.round)).toEqual([3000, 6000]);
  });

  test('shows the ways between its speeds as cuts', () => {
    const { window } = view(steps({ speeds: EVERY_250 }));
    const reasons = window!.cuts.map(({ reason }) => reason);
    expect(reasons.some((one) => /on the way from 3,\d\d\d to 3,\d\d\d rpm/.test(one))).toBe(true);
    expect(reasons.filter((one) => /not yet settled/.test(one))).toHaveLength(13);
    expect(reasons[0]).toMatch(/rows 1-\d+: before/);
    expect(reasons.at(-1)).toMatch(/after 6,00\d rpm was held/);
  });

  test('keeps the speeds inside a window set by hand', () => {
    const { curve } = view(steps({ speeds: EVERY_250 }), [3900, 5100]);
    expect(Array.from(curve!.engineSpeedRpm, (rpm) => Math.round(rpm / 10) * 10)).toEqual([
      4000, 4250, 4500, 4750, 5000,
    ]);
    const outside = view(steps({ speeds: EVERY_250 }), [7000, 8000]);
    expect([outside.curve, codes(outside)]).toEqual([null, ['no-row-counts']]);
  });

  test('going down is falling; up and down again gives one point a speed, and says so', () => {
    const down = view(steps({ speeds: [...EVERY_250].reverse() }));
    expect(down.window?.direction).toBe('falling');
    const both = view(steps({ speeds: [3000, 3500, 4000, 4500, 5000, 4500, 4000, 3500] }));
    expect(both.curve?.engineSpeedRpm).toHaveLength(5);
    expect(codes(both)).toContain('speed-given-twice');
  });

  test('holds of little more than a second count, with their second half', () => {
    const { curve } = view(steps({ speeds: EVERY_250, holdS: 2, wayS: 0.5 }));
    expect(curve?.engineSpeedRpm).toHaveLength(13);
  });

  test('a spike in a hold is left out of its mean and named', () => {
    const channels = steps({ speeds: EVERY_250 });
    const torque = channels[2]!.values;
    const row = 3 * 20 + 20 + 60;
    torque[row] = 2000;
    const { curve, spikes } = view(channels);
    expect(spikes.map((spike) => spike.row)).toContain(row);
    expect(Math.abs(curve!.channels.get('torque')![0]! / torqueAt(3000) - 1)).toBeLessThan(0.001);
  });
});

describe('is not taken for a step test', () => {
  const isSteps = (channels: ReturnType<typeof steps>) => acceptanceWindow(channels).holds !== undefined;

  test.each([20, 50, 150, 300, 600])('a sweep at %i rpm/s', (rate) => {
    const { channels } = inventedSweep({ torqueAt, rate, speedNoiseRpm: 3, rowsPerSecond: 25 });
    expect(isSteps(channels)).toBe(false);
  });

  test.each<[string, Steps]>([
    ['three tuning stops', { speeds: [3000, 4000, 5000] }],
    ['steps of 60 rpm, which a slow sweep makes too', { speeds: EVERY_250.map((_, at) => 3000 + 60 * at) }],
    ['stops of half a second', { speeds: EVERY_250, holdS: 0.5 }],
    ['more time on the way than held', { speeds: EVERY_250, holdS: 1.5, wayS: 4 }],
    ['a brake that hunts by 40 rpm', { speeds: EVERY_250, huntRpm: 40 }],
  ])('%s', (_, made) => expect(isSteps(steps(made))).toBe(false));

  test('one speed held over and over between pulls', () => {
    expect(isSteps(steps({ speeds: [2500, 6500, 2500, 6500, 2500, 6500] }))).toBe(false);
  });
});
