import type { AirReading } from '@pullbook/core/air';
import { type DemoBuild, onTheBrake } from './full-throttle.ts';
import { hiddenTruthOf } from './hidden-truth.ts';
import { noiseFor, rememberingNoise } from './noise.ts';

/** What is told about one sweep before it is made. */
export interface SweepPlan {
  ref: string;
  setUpRef: string;
  build: DemoBuild;
  weather: AirReading;
  /** Oil and coolant as the pull starts, K. */
  oilStart: number;
  coolantStart: number;
  /** Warmth left in the intake by the pulls before, K. */
  soak: number;
  /** r/min at which the throttle is shut */
  liftRpm: number;
  /** A row of the torque channel that a loose plug throws off, by engine speed; `null`: none. */
  torqueSpikeRpm: number | null;
}

/** One row of the logger, inside units. */
export interface SweepRow {
  time: number;
  engineSpeedRpm: number;
  torque: number;
  power: number;
  boost: number;
  lambda: number;
  /** 0 to 1 */
  throttle: number;
  inletAirTemperature: number;
  chargeTemperature: number;
  oilTemperature: number;
  coolantTemperature: number;
  oilPressure: number;
  fuelFlow: number;
}

const ROWS_PER_SECOND = 50;
const SWEEP_RPM_PER_SECOND = 300;
const HOLD_RPM = 2980;
const TIP_IN_AT = 1;
const SWEEP_FROM = 2.1;
const SECONDS_AFTER_LIFT = 1.2;

/**
 * The rows of one pull: a hold at part throttle, the throttle opened while the brake still holds, the sweep, the lift.
 * Torque scatters by set-up (0.15 %), by pull (0.4 %), slowly within the pull (0.3 %, about 0.4 s long) and from row
 * to row (0.3 %).
 */
export function sweepRows(seed: number, plan: SweepPlan): SweepRow[] {
  const offset =
    0.0015 * noiseFor(seed, `set-up ${plan.setUpRef}`).normal() +
    0.004 * noiseFor(seed, `${plan.ref} offset`).normal();
  const engine = onTheBrake(plan.build, plan.weather, hiddenTruthOf(seed));
  const share = engine.weatherShare * (1 + offset);
  const slow = rememberingNoise(noiseFor(seed, `${plan.ref} slow`), 0.95);
  const quick = noiseFor(seed, `${plan.ref} quick`);
  const drift = rememberingNoise(noiseFor(seed, `${plan.ref} drift`), 0.99);
  const liftAt = SWEEP_FROM + (plan.liftRpm - HOLD_RPM) / SWEEP_RPM_PER_SECOND;
  const count = Math.round((liftAt + SECONDS_AFTER_LIFT) * ROWS_PER_SECOND);
  const rows: SweepRow[] = [];
  let spikePending = plan.torqueSpikeRpm;
  let probe = plan.weather.temperature + 4 + plan.soak;
  for (let index = 0; index < count; index += 1) {
    const time = index / ROWS_PER_SECOND;
    const sinceLift = Math.max(0, time - liftAt);
    const engineSpeedRpm = speedAt(time, liftAt, plan.liftRpm) + 0.8 * quick.normal();
    const open = engine.at(engineSpeedRpm);
    const throttle = throttleAt(time, sinceLift);
    const load = loadAt(time, sinceLift);
    const full = open.torque * share * (1 + 0.003 * slow() + 0.003 * quick.normal());
    let torque = load * full - (1 - load) * 18;
    if (spikePending !== null && engineSpeedRpm >= spikePending) {
      torque *= 1.19;
      spikePending = null;
    }
    const power = (torque * engineSpeedRpm * 2 * Math.PI) / 60;
    const boost = boostAt(open.boost, load) + 250 * quick.normal();
    const inletAirTemperature = plan.weather.temperature + 0.6 + 0.3 * drift();
    const wanted = inletAirTemperature + plan.soak + open.chargeRise * (0.3 + 0.7 * load);
    probe += (wanted - probe) / (0.8 * ROWS_PER_SECOND);
    rows.push({
      time,
      engineSpeedRpm,
      torque,
      power,
      boost,
      lambda: (load > 0.5 ? open.lambda : 0.99 + 0.2 * Math.min(1, sinceLift)) + 0.004 * quick.normal(),
      throttle: Math.min(1, Math.max(0, throttle + 0.001 * quick.normal())),
      inletAirTemperature,
      chargeTemperature: probe + 0.15 * quick.normal(),
      oilTemperature: plan.oilStart + 0.16 * Math.max(0, time - TIP_IN_AT) + 0.1 * drift(),
      coolantTemperature: plan.coolantStart + 0.12 * Math.max(0, time - TIP_IN_AT) + 0.1 * drift(),
      oilPressure: 275_000 + 30 * engineSpeedRpm + 2500 * quick.normal(),
      fuelFlow: open.fuelFlow(Math.max(power, 4000)) * (1 + 0.008 * quick.normal()),
    });
  }
  return rows;
}

function speedAt(time: number, liftAt: number, liftRpm: number): number {
  if (time < SWEEP_FROM) return HOLD_RPM;
  if (time < liftAt) return HOLD_RPM + SWEEP_RPM_PER_SECOND * (time - SWEEP_FROM);
  return Math.max(900, liftRpm - 900 * (time - liftAt));
}

function throttleAt(time: number, sinceLift: number): number {
  if (sinceLift > 0) return Math.max(0, 1 - sinceLift / 0.12);
  return 0.14 + 0.86 * Math.min(1, Math.max(0, (time - TIP_IN_AT) / 0.3));
}

/** Share of full-throttle torque: the brake settles within a quarter of a second of the throttle. */
function loadAt(time: number, sinceLift: number): number {
  if (sinceLift > 0) return Math.exp(-sinceLift / 0.08);
  return time < TIP_IN_AT ? 0.16 : 1 - 0.84 * Math.exp(-(time - TIP_IN_AT) / 0.2);
}

/** The manifold stands below ambient while the throttle is nearly shut. */
function boostAt(fullLoadBoost: number, load: number): number {
  return load * fullLoadBoost - (1 - load) * 52_000;
}
