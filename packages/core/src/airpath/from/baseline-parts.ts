import type { AirState } from '../../air/index.ts';
import { figureOf, numberFigure } from '../../quantity/index.ts';
import { type Remark, remark, said } from '../../remark/index.ts';

/**
 * Indicated work of a kilogram of air, J/kg, at a compression ratio of 9.5: 0.36 of the heat of the petrol that it burns, 44 MJ/kg by 14.6
 * (common practice, no source). A rich mixture burns no more, for the air is used up. Gives some 9.4 hp for each lb/min at the crankshaft.
 */
const WORK_OF_AIR = (0.36 * 44e6) / 14.6;
const RATIO_OF_WORK_OF_AIR = 9.5;
/** Ratio of specific heats of the burnt gas in the efficiency's dependence on compression (Heywood, from memory). */
const BURNT_GAS_RATIO = 1.3;

/**
 * Air, kg/s, out of indicated power, W, where no air and no fuel was measured. Only the product of air and efficiency is seen, so it is
 * good to some 8 %, one and the same at all speeds.
 *
 * @example airOfPower(150_000, 9.5) // 0.138
 */
export function airOfPower(indicatedPower: number, compressionRatio: number | null): number {
  const gain = (ratio: number) => 1 - ratio ** (1 - BURNT_GAS_RATIO);
  const ratio = compressionRatio ?? RATIO_OF_WORK_OF_AIR;
  return indicatedPower / ((WORK_OF_AIR * gain(ratio)) / gain(RATIO_OF_WORK_OF_AIR));
}

/** Pa by which the manifold lies below the ambient air at the highest flow, where nobody read it (common practice, no source). */
const USUAL_DEPRESSION = 1500;

/** Manifold pressure, Pa absolute, of a naturally aspirated engine at full throttle, where it was not read. */
export function assumedManifoldPressure(airFlow: readonly number[], air: AirState): number[] {
  const highest = Math.max(...airFlow.filter(Number.isFinite));
  return airFlow.map((flow) => air.pressure - USUAL_DEPRESSION * (flow / highest) ** 2);
}

export const manifoldPressureAssumed: Remark = remark(
  'note',
  'manifold-pressure-assumed',
  said`The manifold's pressure without the supercharger was not read: ${figureOf(USUAL_DEPRESSION, 'pressureDifference')} below ambient at the highest air flow is taken (open throttle; common practice, no source).`,
);

export const manifoldTemperatureAssumed = (air: AirState): Remark =>
  remark(
    'note',
    'manifold-temperature-assumed',
    said`The charge's temperature without the supercharger was not read: that of the air, ${figureOf(air.temperature, 'temperature')}, is taken.`,
  );

export const frictionAssumed: Remark = remark(
  'note',
  'friction-assumed',
  'Friction is not known: that of a motored engine with its exchange of gas is taken, 0.97 + 0.15 n + 0.05 n² bar, n in 1,000 rpm (Barnes-Moss, in Heywood eq. 13.6, from memory).',
);

export const airFromPower = (compressionRatio: number | null): Remark =>
  remark(
    'caution',
    'air-from-power',
    said`Neither air nor fuel was measured without the supercharger. The air is reckoned from power and friction with a usual efficiency at a compression ratio of ${numberFigure(compressionRatio ?? RATIO_OF_WORK_OF_AIR, 1)}: only the product of air and efficiency is seen, so it is good to ±16 % and boost with it. One pull with fuel flow and lambda makes it ±6 %.`,
  );
