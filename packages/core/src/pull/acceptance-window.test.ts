import { describe, expect, test } from 'vitest';
import { acceptanceWindow } from './acceptance-window.ts';
import { acceptedRows } from './accepted-rows.ts';
import { inventedChannel, inventedPoints, inventedSweep, inventedTorque } from './invented-pull.testing.ts';

const quiet = { torqueAt: inventedTorque };
const noisy = { ...quiet, torqueNoise: 0.004, speedNoiseRpm: 4 };

describe('the window of a logged sweep', () => {
  for (const [name, options] of Object.entries({
    'with a throttle channel': noisy,
    'without one': { ...noisy, withThrottle: false },
    'at 10 rows a second': { ...quiet, rowsPerSecond: 10, withThrottle: false },
    'slow, at 100 rpm/s': { ...noisy, rate: 100 },
    'fast, at 1000 rpm/s': { ...noisy, rate: 1000 },
  }))
    test(`keeps the last row of the sweep and nothing after it, ${name}`, () => {
      const { channels, lastRow } = inventedSweep(options);
      const { window } = acceptanceWindow(channels);
      const rowsOff = window!.toRow - lastRow;
      expect(rowsOff).toBeLessThanOrEqual(0);
      expect(rowsOff).toBeGreaterThanOrEqual(-2);
    });

  test('the rate and direction of the sweep come out', () => {
    const { window } = acceptanceWindow(inventedSweep({ ...noisy, rate: 250 }).channels);
    expect(window?.direction).toBe('rising');
    expect(window?.sweepRateRpmPerS).toBeGreaterThan(245);
    expect(window?.sweepRateRpmPerS).toBeLessThan(255);
  });

  test('every row outside the window lies in exactly one cut, and the throttle is named with its figure', () => {
    const { channels } = inventedSweep(noisy);
    const { window } = acceptanceWindow(channels);
    const covered = window!.cuts.flatMap((cut) =>
      Array.from({ length: cut.toRow - cut.fromRow + 1 }, (_, step) => cut.fromRow + step),
    );
    const outside = Array.from(channels[0]!.values.keys()).filter(
      (row) => row < window!.fromRow || row > window!.toRow,
    );
    expect([...covered].sort((a, b) => a - b)).toEqual(outside);
    expect(window!.cuts[0]!.reason).toMatch(/^rows 1-\d+: throttle at 12 %, not yet open$/);
    expect(window!.cuts.at(-1)!.reason).toMatch(/throttle at 0 %, no longer open$/);
  });

  test('torque that comes up slowly is cut until it has settled, by what it does and not by a width', () => {
    const starts = [0.05, 0.2, 0.4].map((settlingS) => {
      const { channels } = inventedSweep({ ...quiet, settlingS });
      const { window } = acceptanceWindow(channels);
      return { settlingS, window: window!, torque: channels[2]!.values };
    });
    for (const { window, torque } of starts)
      for (let row = window.fromRow; row <= window.toRow; row += 1) {
        const settled = inventedTorque(2500 + 6 * (row - 110));
        if (row > 110) expect(torque[row]! / settled).toBeGreaterThan(0.95);
      }
    expect(starts[2]!.window.windowRpm[0]).toBeGreaterThan(starts[0]!.window.windowRpm[0] + 100);
    expect(starts[2]!.window.cuts.some((cut) => cut.reason.includes('torque not yet settled'))).toBe(true);
  });

  test('a throttle shut before the top ends the pull there', () => {
    const { channels } = inventedSweep(noisy);
    const throttle = channels.find((channel) => channel.meaning === 'throttle')!;
    const speed = channels[1]!.values;
    throttle.values.forEach((_, row) => {
      if (speed[row]! > 5600) throttle.values[row] = 0.6;
    });
    const { window } = acceptanceWindow(channels);
    expect(window!.windowRpm[1]).toBeGreaterThan(5560);
    expect(window!.windowRpm[1]).toBeLessThan(5620);
  });

  test('without a throttle channel a collapse of torque before the turn of the speed ends the pull', () => {
    const { channels, lastRow } = inventedSweep({ ...noisy, withThrottle: false });
    const torque = channels[2]!.values;
    for (let row = lastRow - 6; row <= lastRow; row++)
      torque[row] = torque[row]! * (0.8 - 0.1 * (row - lastRow + 6));
    const { window } = acceptanceWindow(channels);
    expect(window!.toRow).toBe(lastRow - 7);
    expect(window!.cuts.some((cut) => cut.reason.includes('torque fell away'))).toBe(true);
  });

  test('a falling sweep is accepted and named', () => {
    const rows = Array.from({ length: 600 }, (_, row) => row);
    const { window, remarks } = acceptanceWindow([
      inventedChannel(
        'time',
        rows.map((row) => row * 0.02),
      ),
      inventedChannel(
        'engineSpeed',
        rows.map((row) => 6500 - 5 * row),
      ),
      inventedChannel(
        'torque',
        rows.map((row) => inventedTorque(6500 - 5 * row)),
      ),
    ]);
    expect(window?.direction).toBe('falling');
    expect(window?.sweepRateRpmPerS).toBeCloseTo(-250, 3);
    expect(remarks.map((one) => one.code)).toContain('falling-sweep');
  });

  test('without time the order of the rows stands in its place', () => {
    const { channels, lastRow } = inventedSweep(noisy);
    const { window } = acceptanceWindow(channels.filter((channel) => channel.meaning !== 'time'));
    expect(Math.abs(window!.toRow - lastRow)).toBeLessThanOrEqual(2);
    expect(window!.sweepRateRpmPerS).toBeNull();
  });

  test('a window set by hand is honoured', () => {
    const { channels } = inventedSweep(quiet);
    const { window } = acceptanceWindow(channels, { windowRpm: [3000, 6000] });
    expect(window!.windowRpm[0]).toBeGreaterThanOrEqual(3000);
    expect(window!.windowRpm[0]).toBeLessThan(3010);
    expect(window!.windowRpm[1]).toBeLessThanOrEqual(6000);
    expect(window!.windowRpm[1]).toBeGreaterThan(5990);
  });

  test('a window that misses the pull is refused with what the pull holds', () => {
    const found = acceptanceWindow(inventedSweep(quiet).channels, { windowRpm: [8000, 9000] });
    expect(found.window).toBeNull();
    expect(found.remarks[0]).toMatchObject({ level: 'refusal', code: 'window-misses-the-pull' });
  });

  test('a slope that sags over more than 150 rpm is remarked', () => {
    let speed = 2500;
    const speeds = Array.from({ length: 800 }, () => {
      speed += speed > 4000 && speed < 4400 ? 3.6 : 6;
      return speed;
    });
    const channels = [
      inventedChannel(
        'time',
        speeds.map((_, row) => row * 0.02),
      ),
      inventedChannel('engineSpeed', speeds),
      inventedChannel('torque', speeds.map(inventedTorque)),
    ];
    const codes = acceptanceWindow(channels).remarks.map((one) => one.code);
    expect(codes.filter((code) => code === 'uneven-sweep')).toHaveLength(1);
    expect(acceptanceWindow(inventedSweep(noisy).channels).remarks).toEqual([]);
  });

  test('rows without any sweep are all used, and it is said', () => {
    const rows = Array.from({ length: 200 }, (_, row) => row);
    const found = acceptanceWindow([
      inventedChannel(
        'time',
        rows.map((row) => row * 0.1),
      ),
      inventedChannel(
        'engineSpeed',
        rows.map((row) => 3000 + 10 * Math.sin(row)),
      ),
      inventedChannel(
        'torque',
        rows.map(() => 300),
      ),
    ]);
    expect(found.window).toMatchObject({ fromRow: 0, toRow: 199 });
    expect(found.remarks[0]?.code).toBe('no-steady-sweep');
  });

  test('without any sweep a window set by hand still holds only its own speeds', () => {
    const speeds = Array.from({ length: 200 }, (_, row) => 3000 + 80 * Math.sin(row / 3));
    const channels = [
      inventedChannel(
        'time',
        speeds.map((_, row) => row * 0.1),
      ),
      inventedChannel('engineSpeed', speeds),
      inventedChannel(
        'torque',
        speeds.map(() => 300),
      ),
    ];
    const { window, remarks } = acceptanceWindow(channels, { windowRpm: [2950, 3050] });
    const counted = acceptedRows(window!);
    expect(counted).toEqual(
      Array.from(speeds.keys()).filter((row) => speeds[row]! >= 2950 && speeds[row]! <= 3050),
    );
    expect(remarks.map((one) => one.code)).toEqual(['no-steady-sweep']);
  });
});

describe('the window of settled points', () => {
  test('takes every row with figures, in whatever order', () => {
    const { window } = acceptanceWindow(inventedPoints([3000, 2500, 4000, 3500], inventedTorque));
    expect(window).toMatchObject({ fromRow: 0, toRow: 3, windowRpm: [2500, 4000], cuts: [] });
  });

  test('a row without torque is cut with the reason', () => {
    const channels = inventedPoints([2500, 3000, 3500, 4000], (speed) => (speed === 3000 ? Number.NaN : 300));
    expect(acceptanceWindow(channels).window!.cuts).toEqual([
      { fromRow: 1, toRow: 1, reason: 'row 2: no torque' },
    ]);
  });
});
