import { alongWhenBurnt, type Burn, burntShare } from './burn-duration.ts';
import type { TrappedCharge } from './trapped-charge.ts';

const DEGREE = Math.PI / 180;
/** Before that the charge is too cold to count, after it no end gas is left. */
const FROM = -50 * DEGREE;
const UNTIL = 80 * DEGREE;
const USUAL_STEP = 2 * DEGREE;
/** Crank radius over rod length: a rod of 1.75 strokes (common practice, no source). */
const CRANK_OVER_ROD = 0.286;
/** Exponent of compression of a rich mixture, which the end gas keeps too, and of what burns and expands (common practice, no source). */
export const COMPRESSION_EXPONENT = 1.31;
const BURNING_EXPONENT = 1.27;
/** Share of the duration, where 90 % are burnt: the rest stands at the walls and does not knock (common practice, no source). */
const END_GAS_UNTIL = alongWhenBurnt(0.9);

/** What does not depend on the spark: one cylinder at one speed, to be run with one spark after another. */
export interface Cylinder {
  trapped: TrappedCharge;
  burn: Burn;
  /** rad, from top dead centre; s from the first. */
  angle: Float64Array;
  time: Float64Array;
  /** Of the volume over that at bottom dead centre: `v^-1.27`, and `v^0.27` in the middle of the step that ends there. */
  expansion: Float64Array;
  heatWeight: Float64Array;
  /** Pa, were nothing to burn. */
  motored: Float64Array;
  trace: Record<'time' | 'pressure' | 'temperature', Float64Array> & { places: number };
}

/** A cylinder made ready. A smaller `step`, rad, only shows that the usual one is small enough. */
export function cylinderWith(
  trapped: TrappedCharge,
  {
    compressionRatio,
    engineSpeedRpm,
    burn,
    step = USUAL_STEP,
  }: { compressionRatio: number; engineSpeedRpm: number; burn: Burn; step?: number },
): Cylinder {
  const count = Math.round((UNTIL - FROM) / step) + 1;
  const [angle, time, expansion, heatWeight, motored] = Array.from(
    { length: 5 },
    () => new Float64Array(count),
  ) as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array];
  const turning = (engineSpeedRpm * Math.PI) / 30;
  for (let place = 0; place < count; place++) {
    const at = FROM + place * step;
    angle[place] = at;
    time[place] = (place * step) / turning;
    const volume = Math.log(volumeAt(at, compressionRatio));
    expansion[place] = Math.exp(-BURNING_EXPONENT * volume);
    motored[place] = trapped.pressure * Math.exp(-COMPRESSION_EXPONENT * volume);
    heatWeight[place] = volumeAt(at - step / 2, compressionRatio) ** (BURNING_EXPONENT - 1);
  }
  return {
    trapped,
    burn,
    angle,
    time,
    expansion,
    heatWeight,
    motored,
    trace: {
      time: time.slice(),
      pressure: new Float64Array(count),
      temperature: new Float64Array(count),
      places: count,
    },
  };
}

/** Volume over that at bottom dead centre, by crank and rod. */
function volumeAt(angle: number, compressionRatio: number): number {
  const sine = CRANK_OVER_ROD * Math.sin(angle);
  const travel = 1 - Math.cos(angle) + (1 - Math.sqrt(1 - sine * sine)) / CRANK_OVER_ROD;
  return (1 + ((compressionRatio - 1) / 2) * travel) / compressionRatio;
}

/**
 * Pressure of the cylinder and temperature of its end gas with the spark at `advance`, rad before top dead centre, for as long as there is end gas. One
 * zone: compressed by a power of the volume, then `d(p V^k) = (k - 1) V^(k-1) dQ` with the heat of Wiebe's function; the end gas is pressed together by the
 * cylinder's pressure. The trace is the cylinder's own and is written over by the next spark.
 */
export function pressureTrace(cylinder: Cylinder, advance: number): Cylinder['trace'] {
  const { trapped, burn, angle, time, expansion, heatWeight, motored, trace } = cylinder;
  const from = burn.lag - advance;
  const until = from + END_GAS_UNTIL * burn.duration;
  // The last place of the spark before stood between two of the steps.
  trace.time[trace.places - 1] = time[trace.places - 1]!;
  let burnt = 0;
  let held = 0;
  let place = 0;
  for (; place < angle.length; place++) {
    let pressure = motored[place]!;
    if (angle[place]! > from && place > 0) {
      if (held === 0) held = motored[place - 1]! / expansion[place - 1]!;
      const now = burntShare((angle[place]! - from) / burn.duration);
      held += (BURNING_EXPONENT - 1) * trapped.heat * heatWeight[place]! * (now - burnt);
      burnt = now;
      pressure = held * expansion[place]!;
    }
    trace.pressure[place] = pressure;
    trace.temperature[place] =
      trapped.temperature * (pressure / trapped.pressure) ** (1 - 1 / COMPRESSION_EXPONENT);
    if (angle[place]! >= until) break;
  }
  trace.places = Math.min(place + 1, angle.length);
  endAt(cylinder, until);
  return trace;
}

/** Draws the last step back to where the end gas is gone, so that the trace moves smoothly with the spark. */
function endAt({ angle, trace }: Cylinder, until: number): void {
  const last = trace.places - 1;
  const step = angle[last]! - angle[last - 1]!;
  const over = Math.max(0, Math.min(1, (angle[last]! - until) / step));
  for (const column of [trace.time, trace.pressure, trace.temperature])
    column[last] = column[last]! - over * (column[last]! - column[last - 1]!);
}
