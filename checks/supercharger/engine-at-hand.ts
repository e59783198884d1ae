import { type AirState, airState } from '@pullbook/core/air';
import { type MatchInput, NO_LOSS } from '@pullbook/core/airpath';
import { absolutePressure, temperature } from '@pullbook/core/quantity';
import { analyticMap } from './analytic-compressor.ts';

/** Dry air of a pressure, Pa, and temperature, K. */
export function dryAir(pressure: number, kelvin: number): AirState {
  const air = airState({
    pressure: absolutePressure(pressure),
    temperature: temperature(kelvin),
    humidity: { route: 'vapourPressure', pressure: absolutePressure(0) },
    altitude: null,
  });
  if (!air.ok) throw new Error(air.remarks[0]?.message);
  return air.value;
}

/** One engine speed of an engine that breathes its ambient air without loss. Inside units. */
export interface AtOneSpeed {
  air: AirState;
  displacement: number;
  engineSpeedRpm: number;
  /** kg/s without the supercharger */
  airFlow: number;
  brakePower: number;
  frictionPower: number;
}

/** A match at one engine speed with nothing lost and no terms, as textbooks have it. */
export function textbookInput(at: AtOneSpeed, changes: Partial<MatchInput> = {}): MatchInput {
  return {
    baseline: {
      engineSpeedRpm: [at.engineSpeedRpm],
      brakePower: [at.brakePower],
      airFlow: [at.airFlow],
      frictionPower: [at.frictionPower],
      manifoldPressure: [at.air.pressure],
      manifoldTemperature: [at.air.temperature],
      lambda: null,
      air: at.air,
      airBasis: 'given',
      origin: 'given',
      pullIds: [],
    },
    displacement: at.displacement,
    compressionRatio: null,
    air: at.air,
    gas: { specificHeat: 1005, gasConstant: 1005 * (0.4 / 1.4) },
    compressor: { map: analyticMap(0), headScale: 1, efficiencyShift: 0, constantEfficiency: 0.7 },
    drive: {
      kind: 'gear',
      pulleyRatio: 1,
      stepUp: 44_000 / at.engineSpeedRpm,
      slip: 0,
      mechanicalEfficiency: 1,
      crankPulleyDiameter: null,
      blowerPulleyDiameter: null,
      wrapAngle: null,
      ribs: null,
      maximumImpellerSpeedRpm: null,
      engineSpeedLimitRpm: null,
      overRevMarginRpm: 200,
    },
    inletLoss: NO_LOSS,
    pipeLoss: NO_LOSS,
    bypass: { state: 'shut', leak: 0 },
    cooler: null,
    throttleLoss: NO_LOSS,
    tap: 'manifold',
    charge: { heatFactor: 1, evaporationCooling: 0, fuelVapour: 0 },
    swallowing: {
      scale: 1,
      exhaustPressureRatio: 1,
      pressureTermRatio: null,
      heatExponent: 0,
      breathing: null,
    },
    work: { factor: 1, gasExchange: false, frictionRise: 0 },
    ...changes,
  };
}

/** The head scale with which the flat analytic compressor gives a pressure ratio at its 44 000 r/min, corrected by `air`. */
export function headScaleFor(pressureRatio: number, air: AirState, exponent = 0.4 / 1.4): number {
  const speed = Math.sqrt(298 / air.temperature);
  return (pressureRatio ** exponent - 1) / ((1 + 0.9 * speed * speed) ** exponent - 1);
}
