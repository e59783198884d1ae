import { absolutePressure, type QuantityKind, temperature } from '../quantity/index.ts';
import { OPEN_AUDIENCE } from './audience.ts';
import { MEANINGS } from './meanings.ts';
import type { Channel, ChannelMeaning, Pull } from './model.ts';
import { PLAIN_TREATMENT } from './treatment.ts';

/** Weather in which the SAE J1349 factor is close to 1: 99 kPa dry, 25 °C. */
export const REFERENCE_WEATHER: NonNullable<Pull['weather']> = {
  pressure: absolutePressure(99_000),
  temperature: temperature(298.15),
  humidity: { route: 'relativeHumidity', ratio: 0 },
  altitude: null,
};

export function inventedChannel(
  meaning: ChannelMeaning,
  values: ArrayLike<number>,
  kind: QuantityKind = MEANINGS[meaning].kind,
): Channel {
  return { meaning, name: meaning, unit: '', kind, values: Float64Array.from(values), origin: 'measured' };
}

/** A pull of invented channels, observed, in reference weather. */
export function inventedPull(channels: Channel[], changes: Partial<Pull> = {}): Pull {
  return {
    id: 'invented',
    name: 'invented',
    combinationId: null,
    setUpId: null,
    sessionId: null,
    orderInSession: null,
    recordedAt: null,
    cell: null,
    operator: null,
    form: 'curve',
    channels,
    summary: null,
    weather: REFERENCE_WEATHER,
    carried: { standard: 'observed', factor: 1 },
    sweep: { momentOfInertia: null, inertiaCompensated: 'unknown' },
    tune: {},
    places: {},
    notes: [],
    events: [],
    outcome: 'completed',
    treatment: PLAIN_TREATMENT,
    audience: OPEN_AUDIENCE,
    origin: 'measured',
    fileHash: null,
    invented: true,
    ...changes,
  };
}

export interface InventedSweep {
  /** Torque over engine speed, N·m. */
  torqueAt: (speedRpm: number) => number;
  fromRpm?: number;
  toRpm?: number;
  /** r/min per second */
  rate?: number;
  rowsPerSecond?: number;
  /** Standard deviation of torque as a share, and of speed in r/min. */
  torqueNoise?: number;
  speedNoiseRpm?: number;
  seed?: number;
  /** Seconds in which torque comes up after the throttle opens. */
  settlingS?: number;
  withThrottle?: boolean;
  more?: (speedRpm: number) => Partial<Record<ChannelMeaning, number>>;
}

/**
 * A logged sweep as it comes off a brake: idling, throttle open and held at the starting speed, swept up, throttle shut and
 * coasting down through the same speeds. Gives the first and last row of the driven sweep beside the channels.
 */
export function inventedSweep(options: InventedSweep): {
  channels: Channel[];
  firstRow: number;
  lastRow: number;
} {
  const { torqueAt, fromRpm = 2500, toRpm = 6500, rate = 300, rowsPerSecond = 50 } = options;
  const { torqueNoise = 0, speedNoiseRpm = 0, seed = 1, settlingS = 0.1, withThrottle = true } = options;
  const normal = normalNoise(seed);
  const step = 1 / rowsPerSecond;
  const rows: { time: number; engineSpeed: number; torque: number; throttle: number; true: number }[] = [];
  let opened = 0;
  const add = (speed: number, torque: number, throttle: number) =>
    rows.push({
      time: rows.length * step,
      engineSpeed: speed + speedNoiseRpm * normal(),
      torque: torque * (1 + torqueNoise * normal()),
      throttle,
      true: speed,
    });
  for (let time = 0; time < 1.5; time += step) add(900, 15, 0.12);
  for (let time = 0; time < 0.4; time += step) add(900 + ((fromRpm - 900) * time) / 0.4, 60, 0.5);
  const underLoad = (speed: number, time: number) =>
    torqueAt(speed) * (1 - 0.6 * Math.exp(-(time - opened) / settlingS));
  let time = 0;
  for (; time < 0.3; time += step) add(fromRpm, underLoad(fromRpm, time), 1);
  opened = 0;
  const firstRow = rows.length;
  for (let swept = 0; swept <= (toRpm - fromRpm) / rate + 1e-9; swept += step)
    add(fromRpm + rate * swept, underLoad(fromRpm + rate * swept, time + swept), 1);
  const lastRow = rows.length - 1;
  for (let coasting = step; coasting < 3; coasting += step)
    add(Math.max(900, toRpm - 1500 * coasting), -25, 0);
  const channels = [
    inventedChannel(
      'time',
      rows.map((row) => row.time),
    ),
    inventedChannel(
      'engineSpeed',
      rows.map((row) => row.engineSpeed),
    ),
    inventedChannel(
      'torque',
      rows.map((row) => row.torque),
    ),
  ];
  if (withThrottle)
    channels.push(
      inventedChannel(
        'throttle',
        rows.map((row) => row.throttle),
      ),
    );
  const more = rows.map((row) => options.more?.(row.true) ?? {});
  for (const meaning of Object.keys(more[0]!) as ChannelMeaning[])
    channels.push(
      inventedChannel(
        meaning,
        more.map((values) => values[meaning] ?? Number.NaN),
      ),
    );
  return { channels, firstRow, lastRow };
}

/** Points of a step test or a printed table. */
export function inventedPoints(speedsRpm: number[], torqueAt: (speedRpm: number) => number): Channel[] {
  return [inventedChannel('engineSpeed', speedsRpm), inventedChannel('torque', speedsRpm.map(torqueAt))];
}

/** Torque of an invented naturally aspirated engine: 400 N·m at 4,500 r/min, falling off as a parabola. */
export const inventedTorque = (speedRpm: number): number => 400 - 2e-5 * (speedRpm - 4500) ** 2;

/** Seeded standard normal numbers (mulberry32 and Box-Muller). */
export function normalNoise(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
