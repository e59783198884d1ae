import {
  type Channel,
  defaultRecipe,
  OPEN_AUDIENCE,
  PLAIN_TREATMENT,
  type Pull,
  type PullView,
} from '@pullbook/core/pull';
import { describe, expect, test } from 'vitest';
import type { RecordedLook, ViewOptions } from './model.ts';
import { pullPage } from './pull-page.ts';
import { MOST_PANELS } from './recorded-channels.ts';
import { recordedPage } from './recorded-page.ts';

const US: ViewOptions = { units: 'us', decimalMark: '.' };
const ROWS = 1_000_000;
const HZ = 1000;

const filled = (value: (row: number) => number) =>
  Float64Array.from({ length: ROWS }, (_, row) => value(row));
const channel = (
  meaning: Channel['meaning'],
  name: string,
  kind: Channel['kind'],
  values: Float64Array,
): Channel => ({ meaning, name, unit: '', kind, values, origin: 'measured' });

/** Idle, a sweep of the middle half, and running out; a noise that repeats and one lone spike in each channel. */
const share = (row: number) => Math.min(1, Math.max(0, (row - ROWS / 4) / (ROWS / 2)));
const noise = (row: number) => ((row * 7919) % 1013) / 1013 - 0.5;
const SPIKE = 612_345;
const buzz = filled((row) => 100 * noise(row));
const strange = Array.from({ length: 24 }, (_, one) => channel('other', `strange ${one}`, 'ratio', buzz));
const pull: Pull = {
  id: 'long',
  name: 'A long one',
  combinationId: null,
  setUpId: null,
  sessionId: null,
  orderInSession: null,
  recordedAt: null,
  cell: null,
  operator: null,
  form: 'curve',
  channels: [
    channel(
      'time',
      'Time',
      'time',
      filled((row) => row / HZ),
    ),
    channel(
      'engineSpeed',
      'Speed',
      'engineSpeed',
      filled((row) => 2500 + 4000 * share(row) + 2 * noise(row)),
    ),
    channel(
      'torque',
      'Torque',
      'torque',
      filled((row) => (row === SPIKE ? 990 : 400 + 60 * Math.sin(3 * share(row)) + 8 * noise(row))),
    ),
    channel(
      'throttle',
      'Throttle',
      'ratio',
      filled((row) => (share(row) > 0 && share(row) < 1 ? 1 : 0.1)),
    ),
    ...strange,
  ],
  summary: null,
  weather: null,
  carried: { standard: 'observed', factor: 1 },
  sweep: { momentOfInertia: null, inertiaCompensated: 'unknown' },
  tune: {},
  places: {},
  notes: [],
  events: [],
  outcome: 'completed',
  treatment: PLAIN_TREATMENT,
  origin: 'measured',
  fileHash: null,
  audience: OPEN_AUDIENCE,
  invented: true,
};
const [FIRST, LAST] = [ROWS / 4 + 1, (3 * ROWS) / 4 - 1];
const view: PullView = {
  pullId: 'long',
  recipe: defaultRecipe(),
  correction: { asked: 'observed', standard: 'observed', factor: 1, reached: true },
  window: {
    fromRow: FIRST,
    toRow: LAST,
    direction: 'rising',
    windowRpm: [2500, 6500],
    sweepRateRpmPerS: 8,
    cuts: [
      { fromRow: 0, toRow: FIRST - 1, reason: 'throttle not yet open' },
      { fromRow: LAST + 1, toRow: ROWS - 1, reason: 'throttle no longer open' },
    ],
  },
  spikes: [{ row: SPIKE, meaning: 'torque', value: 990, expected: 450 }],
  curve: null,
  peakPower: null,
  peakTorque: null,
  remarks: [],
};
const bytesOf = (value: unknown) => Buffer.byteLength(JSON.stringify(value));
const look: RecordedLook = { over: 'time', range: null, channels: null };

describe('a recording of a million rows', () => {
  test('its pages are small on the wire, whatever is asked for', () => {
    const page = pullPage({ pull, view, combination: null, file: null, trials: [], cell: null }, US);
    expect(bytesOf(page)).toBeLessThan(1_000_000);
    const everything = pull.channels.map((_, index) => `${index}`);
    for (const over of ['time', 'speed'] as const) {
      const plain = recordedPage(pull, view, { ...look, over }, US);
      expect(plain.chart!.panels.length).toBeGreaterThanOrEqual(2);
      expect(bytesOf(plain)).toBeLessThan(1_000_000);
      const full = recordedPage(pull, view, { ...look, over, channels: everything }, US);
      expect(full.chart!.panels).toHaveLength(MOST_PANELS);
      expect(bytesOf(full)).toBeLessThan(1_000_000);
    }
  });

  test('the one row that stands out is not lost', () => {
    const torque = recordedPage(pull, view, look, US).chart!.panels.find(({ title }) => title === 'Torque')!;
    const heights = torque.lines.flatMap(({ y }) => y).filter((height) => height !== null);
    // 990 N·m; 1 N·m = 0.737562 lb-ft
    expect(Math.max(...heights)).toBeCloseTo(990 * 0.737562, 1);
  });

  test('a closer look goes down to single rows', () => {
    const near: RecordedLook = { ...look, range: [SPIKE / HZ - 0.1, SPIKE / HZ + 0.1] };
    const { cursor, chart } = recordedPage(pull, view, near, US);
    expect(cursor!.at).toContain(SPIKE / HZ);
    expect(cursor!.at.every((at) => at >= near.range![0] && at <= near.range![1])).toBe(true);
    expect(cursor!.at).toHaveLength(201);
    const line = chart!.panels[0]!.lines.find(({ weight }) => weight === 'pull')!;
    expect(line.x.length).toBeGreaterThanOrEqual(201);
    expect(line.x.length).toBeLessThanOrEqual(203);
    expect(chart!.xRange).toEqual([0, (ROWS - 1) / HZ]);
  });
});
