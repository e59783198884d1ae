import { correctionDin70020 } from './correction-din-70020.ts';
import { correctionIso1585 } from './correction-iso-1585.ts';
import { correctionObserved } from './correction-observed.ts';
import { correctionSaeJ607 } from './correction-sae-j607.ts';
import { correctionSaeJ1349 } from './correction-sae-j1349.ts';
import type { CorrectionId, CorrectionStandard } from './model.ts';

/** All standards, in the order they are offered. */
export const CORRECTIONS: Record<CorrectionId, CorrectionStandard> = {
  'sae-j1349': correctionSaeJ1349,
  'sae-j607': correctionSaeJ607,
  'iso-1585': correctionIso1585,
  'din-70020': correctionDin70020,
  observed: correctionObserved,
};

/** The standard of an id from outside; `null` where there is none. */
export function correctionById(id: string): CorrectionStandard | null {
  return Object.hasOwn(CORRECTIONS, id) ? CORRECTIONS[id as CorrectionId] : null;
}

/** Observed torque carried to the reference air. The same factor serves torque and power: engine speed is not corrected. */
export function correctTorque(observed: number, factor: number): number {
  return observed * checkedFactor(factor);
}

/** Observed power carried to the reference air. */
export function correctPower(observed: number, factor: number): number {
  return observed * checkedFactor(factor);
}

/** Torque or power as observed, from a figure that carries a correction of a known factor. */
export function undoCorrection(carried: number, factor: number): number {
  return carried / checkedFactor(factor);
}

function checkedFactor(factor: number): number {
  if (!(factor > 0 && factor < Number.POSITIVE_INFINITY)) {
    throw new Error(`invalid correction factor; not above 0: ${factor}`);
  }
  return factor;
}
