import { deriveFigures } from '../combination/index.ts';
import { figureOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import type { PullAtHand } from './pull-at-hand.ts';

/**
 * Mean effective pressure of a four-stroke, Pa: 4π T / V. `meanEffectivePressure(542.327, 5.7354e-3)`, 400 lb-ft of 350 in³,
 * is 1.188 MPa, 172.3 psi.
 */
export const meanEffectivePressure = (torque: number, displacement: number): number =>
  (4 * Math.PI * torque) / displacement;

/** V10: highest torque over displacement. */
export function meanPressure(at: PullAtHand): Finding[] {
  const { peakTorque } = at.view;
  if (peakTorque === null || at.sheet === null) return [];
  const displacement = deriveFigures(at.sheet).find(({ id }) => id === 'displacement')?.value ?? null;
  if (displacement === null || !(displacement > 0)) return [];
  const value = meanEffectivePressure(peakTorque.value, displacement);
  const kind = 'pressureDifference';
  const pressure = (pascal: number) => figureOf(pascal, kind, { decimals: 0 });
  const high = highest(at);
  const input = 'Highest torque and displacement';
  if (high !== null && value > high)
    return [
      at.find('V10', {
        input,
        kind,
        value,
        threshold: high,
        said: said`The highest torque is a mean pressure of ${pressure(value)} over the displacement; ${pressure(high)} is more than engines ${at.boosted ? 'at this boost' : 'without a supercharger'} reach. Check displacement, torque and its unit, and the correction factor.`,
      }),
    ];
  const low = at.limit('V10.low');
  if (at.boosted || value >= low) return [];
  return [
    at.find('V10', {
      input,
      kind,
      value,
      threshold: low,
      level: 'note',
      said: said`The highest torque is a mean pressure of ${pressure(value)} over the displacement; production engines begin at ${pressure(low)}. A mild engine, a cylinder that does not work, or a slip in displacement or torque.`,
    }),
  ];
}

/** With a supercharger times pressure ratio and the highest index; `null`: its boost or the barometer is not known. */
function highest(at: PullAtHand): number | null {
  const high = at.limit('V10.high');
  if (!at.boosted) return high;
  if (at.highestBoost === null || at.ambient === null) return null;
  return high * (1 + at.highestBoost / at.ambient) * at.limit('V10.index');
}
