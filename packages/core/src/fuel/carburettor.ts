import { figureOf, rangeOf, toInside } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';

/** Boost, Pa, above which hollow brass floats have collapsed: 8 to 10 psi (common practice, no source). */
export const FLOATS_STAND = toInside(8, 'psi', 'gaugePressure');
/** Pressure at the pump above base and boost, Pa: 3 to 5 psi (common practice, no source). */
const PUMP_ABOVE = [
  toInside(3, 'psi', 'pressureDifference'),
  toInside(5, 'psi', 'pressureDifference'),
] as const;
/** Usual at rest, Pa: 6 to 7.5 psi (common practice, no source). */
export const USUAL_BASE_PRESSURE = toInside(6.5, 'psi', 'pressureDifference');

/**
 * Fuel pressure before the float valve of a carburettor that is blown through, Pa above open air: its bowl stands under boost, so
 * that must be added to what it has at rest. `blowThroughPressure(45e3, 55e3)`: 100e3
 */
export const blowThroughPressure = (base: number, boost: number): number => base + boost;

/** What to see to before a carburettor is blown through at that boost, Pa. Common practice, no source. */
export function blowThroughCautions(base: number, boost: number): Remark[] {
  if (!(boost > 0)) return [];
  const pressure = blowThroughPressure(base, boost);
  const [least, most] = PUMP_ABOVE;
  return [
    remark(
      'caution',
      'blow-through-pressure',
      said`At ${figureOf(boost, 'gaugePressure')} of boost the carburettor needs ${figureOf(pressure, 'gaugePressure')} of fuel pressure: ${figureOf(base, 'pressureDifference')} at rest and boost on top, by a regulator that follows boost. The pump must pass the fuel at ${rangeOf(pressure + least, pressure + most, 'gaugePressure')} (common practice, no source).`,
    ),
    ...(boost > FLOATS_STAND
      ? [
          remark(
            'caution',
            'blow-through-floats',
            said`Hollow brass floats have collapsed above some ${figureOf(FLOATS_STAND, 'gaugePressure')} (common practice, no source); ${figureOf(boost, 'gaugePressure')} is planned. Fit floats that are solid, and ask the carburettor’s maker.`,
          ),
        ]
      : []),
  ];
}
