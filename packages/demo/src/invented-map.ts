import type { HiddenTruth } from './hidden-truth.ts';
import { WHEEL_DIAMETER } from './invented-blower.ts';
import type { DemoMap } from './model.ts';

/** As its maker corrected it. */
const REFERENCE = { pressure: 100_000, temperature: 298.15 };
const DENSITY = REFERENCE.pressure / (287 * REFERENCE.temperature);
const SPEED_OF_SOUND = Math.sqrt(1.4 * 287 * REFERENCE.temperature);
const SPECIFIC_HEAT = 1005;
const SPEEDS_RPM = [20_000, 28_000, 36_000, 42_000, 48_000, 54_000];
/** Where along a line its points were taken, from the surge edge to the last one. */
const TAKEN_AT = [0, 0.18, 0.36, 0.52, 0.66, 0.78, 0.89, 1];
/** As sheets name it. */
export const MAP_NAME = 'Hill-climb blower, 124 mm wheel';

/**
 * The map of the invented blower as a maker would hand it over: a table of points, rounded. Curves of our own, drawn by hand:
 * near what the blower does on the engine, and a few per cent off in head.
 */
export const inventedMap = ({ mapShortOf }: HiddenTruth): DemoMap => ({
  ref: 'map-of-blower',
  name: MAP_NAME,
  form: 'points',
  reference: REFERENCE,
  geometry: { wheelExitDiameter: WHEEL_DIAMETER, wheelInletDiameter: 0.084, blades: 20, backsweep: 0 },
  points: SPEEDS_RPM.flatMap((speedRpm) => lineAt(speedRpm, mapShortOf)),
  leftEnd: 'surge',
  origin: 'data sheet',
  notes: 'Invented. Table of a unit of the same series, total to total.',
  invented: true,
  createdAt: '2026-03-12T17:45:00+01:00',
});

function lineAt(speedRpm: number, shortOf: number): DemoMap['points'] {
  const tipSpeed = (Math.PI * WHEEL_DIAMETER * speedRpm) / 60;
  const mach = tipSpeed / SPEED_OF_SOUND;
  const usual = 0.0825 - 0.0144 * (mach - 0.4);
  const steepness = 4 + 3 * Math.max(0, mach - 0.6);
  const surge = 0.034 + 0.01 * mach;
  const last = usual * 2.4 ** (1 / steepness);
  return TAKEN_AT.map((share) => {
    const flowCoefficient = surge + share * (last - surge);
    const off = flowCoefficient / usual;
    const recirculating = 60 * Math.max(0, 0.052 - flowCoefficient) ** 2;
    const head = shortOf * (0.8 - 0.167 * off ** steepness - recirculating);
    const work = 0.945 - 0.16 * (off - 0.8);
    const rise = (head * tipSpeed ** 2) / (SPECIFIC_HEAT * REFERENCE.temperature);
    return {
      flow: rounded(flowCoefficient * DENSITY * tipSpeed * WHEEL_DIAMETER ** 2, 4),
      pressureRatio: rounded((1 + rise) ** 3.5, 3),
      speedRpm,
      efficiency: rounded(head / work, 3),
    };
  });
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
