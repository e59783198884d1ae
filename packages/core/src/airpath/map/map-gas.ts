import type { MapReference } from '../model.ts';

/**
 * The gas that maps are reduced with: dry air of constant properties, ratio of specific heats 1.4, as the test codes' and makers'
 * own efficiencies have it. With properties that vary with temperature the efficiency of a map point moves by up to 0.01 at a pressure
 * ratio of 5; see the gas room.
 */
export const MAP_GAS = { ratio: 1.4, gasConstant: 287.05 } as const;

/** Exponent of pressure for temperature: (ratio - 1) / ratio. */
export const ISENTROPIC_EXPONENT = (MAP_GAS.ratio - 1) / MAP_GAS.ratio;

/** m/s at the reference temperature */
export const soundSpeedOf = ({ temperature }: MapReference): number =>
  Math.sqrt(MAP_GAS.ratio * MAP_GAS.gasConstant * temperature);

/** kg/m³ at the reference state */
export const referenceDensityOf = ({ pressure, temperature }: MapReference): number =>
  pressure / (MAP_GAS.gasConstant * temperature);

/** Isentropic rise of temperature over inlet temperature for a pressure ratio: 1.5 gives 0.1228. */
export const idealRiseOf = (pressureRatio: number): number => pressureRatio ** ISENTROPIC_EXPONENT - 1;

/** Pressure ratio of an isentropic rise over inlet temperature; 3.5 = 1.4 / 0.4. The root keeps it quick. */
export function pressureRatioOfRise(rise: number): number {
  const ratio = 1 + rise;
  return ratio <= 0 ? 0 : ratio * ratio * ratio * Math.sqrt(ratio);
}

/**
 * What makes speeds and flows dimensionless: tip Mach number = speed × `machPerRpm`, flow over (density × speed of sound × exit
 * diameter²) = flow / `flowUnit`.
 */
export function scalesOf(reference: MapReference, wheelExitDiameter: number) {
  const sound = soundSpeedOf(reference);
  return {
    /** 1 / (r/min) */
    machPerRpm: (Math.PI * wheelExitDiameter) / 60 / sound,
    /** kg/s */
    flowUnit: referenceDensityOf(reference) * sound * wheelExitDiameter * wheelExitDiameter,
  };
}
