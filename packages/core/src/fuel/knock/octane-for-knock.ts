import type { Fuel } from '../model.ts';

/** Research and motor number of a usual pump gasoline, for a fuel of which nothing was told. */
const USUAL = { research: 95, motor: 85 };
/** What the two usually differ by, for a gasoline of which one was told (common practice, no source). */
const USUAL_SENSITIVITY = 10;

export interface OctaneForKnock {
  /** What the delay is asked with: the mean of research and motor number. */
  octane: number;
  /** Research less motor number. */
  sensitivity: number;
  /** Both were told, one, or none. */
  told: 'both' | 'one' | 'none';
}

/**
 * The delay was fitted to primary reference fuels, whose two numbers are one. A fuel that has two behaves between them or, cold and at high pressure, better
 * than its research number: the mean is the careful one.
 */
export function octaneForKnock({ researchOctane, motorOctane }: Fuel): OctaneForKnock {
  const research =
    researchOctane ?? (motorOctane === null ? USUAL.research : motorOctane + USUAL_SENSITIVITY);
  const motor = motorOctane ?? (researchOctane === null ? USUAL.motor : researchOctane - USUAL_SENSITIVITY);
  const known = [researchOctane, motorOctane].filter((one) => one !== null).length;
  return {
    octane: (research + motor) / 2,
    sensitivity: research - motor,
    told: known === 2 ? 'both' : known === 1 ? 'one' : 'none',
  };
}
