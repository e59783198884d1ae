import type { MatchCurve, MatchInput } from '../airpath/index.ts';
import { figureAt } from './figure-at.ts';

/** A match as the explanations see it. */
export interface Matched {
  input: MatchInput;
  curve: MatchCurve;
}

/** What a difference of power is made of, in the order in which it is told. */
export const POWER_PARTS = [
  'manifoldPressure', // over that of the air outside
  'manifoldTemperature', // over that of the air outside
  'breathing', // air for a density in the manifold
  'weather', // pressure and temperature of the air outside
  'work', // of a kilogram of air in the cylinders: spark, mixture, fuel
  'friction',
  'drive', // of the supercharger
] as const;
export type PowerPart = (typeof POWER_PARTS)[number];

/** A difference of brake power at one engine speed, and its parts, W; what costs power is negative. */
export interface SplitOfPower {
  engineSpeedRpm: number;
  /** Brake power of the two matches. */
  from: number;
  to: number;
  parts: Record<PowerPart, number>;
}

/**
 * Splits the difference of two matches' brake power into its causes. Indicated power is a product (pressure, warmth, breathing,
 * weather, work of the air), and its difference goes to the factors by the logarithmic mean: additive, exact, the same back to
 * front. Friction and drive are differences. The parts sum to the difference. `null`: no match there on one of the sides.
 *
 * A warmer charge is lighter but takes less heat from the walls, so that its part counts temperature to the power of one less
 * the match's heat exponent. Logarithmic mean Divisia index, Ang (2005), from memory.
 *
 * @example splitOfPower(before, after, 6000)?.parts.drive // -1200: the drive takes 1.2 kW more
 */
export function splitOfPower(from: Matched, to: Matched, engineSpeedRpm: number): SplitOfPower | null {
  const [before, after] = [from, to].map((side) => factorsOf(side, engineSpeedRpm));
  if (before === undefined || after === undefined || before === null || after === null) return null;
  const exponent = (from.input.swallowing.heatExponent + to.input.swallowing.heatExponent) / 2;
  const warmth = (ratio: number) => -(1 - exponent) * Math.log(ratio);
  const airFlow = Math.log(after.airFlow / before.airFlow);
  const weather =
    Math.log(after.outsidePressure / before.outsidePressure) +
    warmth(after.outsideTemperature / before.outsideTemperature);
  const manifoldPressure = Math.log(after.pressureRatio / before.pressureRatio);
  const manifoldTemperature = warmth(after.temperatureRatio / before.temperatureRatio);
  const shares = {
    manifoldPressure,
    manifoldTemperature,
    breathing: airFlow - manifoldPressure - manifoldTemperature - weather,
    weather,
    work: Math.log(after.indicatedPower / before.indicatedPower) - airFlow,
  };
  const whole = Object.values(shares).reduce((sum, share) => sum + share, 0);
  const mean = before.indicatedPower * (whole === 0 ? 1 : Math.expm1(whole) / whole);
  const parts = {
    manifoldPressure: mean * shares.manifoldPressure,
    manifoldTemperature: mean * shares.manifoldTemperature,
    breathing: mean * shares.breathing,
    weather: mean * shares.weather,
    work: mean * shares.work,
    friction: before.frictionPower - after.frictionPower,
    drive: before.drivePower - after.drivePower,
  };
  return { engineSpeedRpm, from: before.brakePower, to: after.brakePower, parts };
}

/** `null`: no match at that speed, or nothing indicated. */
function factorsOf({ input, curve }: Matched, engineSpeedRpm: number) {
  const at = figureAt(curve, engineSpeedRpm);
  const factors = {
    airFlow: at('airFlow'),
    indicatedPower: at('indicatedPower'),
    frictionPower: at('frictionPower'),
    drivePower: at('drivePower'),
    brakePower: at('brakePower'),
    outsidePressure: input.air.pressure,
    outsideTemperature: input.air.temperature,
    pressureRatio: at('manifoldPressure') / input.air.pressure,
    temperatureRatio: at('manifoldTemperature') / input.air.temperature,
  };
  const isThere = Object.values(factors).every(Number.isFinite);
  return isThere && factors.airFlow > 0 && factors.indicatedPower > 0 ? factors : null;
}
