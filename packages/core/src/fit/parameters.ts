import type { MatchInput, SpreadPart } from '../airpath/index.ts';
import type { FitParameterId } from './model.ts';

/** In this order everywhere. */
export const PARAMETERS: readonly FitParameterId[] = [
  'headScale',
  'flowScale',
  'swallowingScale',
  'chargeHeat',
  'workFactor',
  'slip',
];

/** The part of a match's spread that each stands in place of. */
export const PART_OF: Record<FitParameterId, SpreadPart> = {
  headScale: 'head',
  flowScale: 'mapFlow',
  swallowingScale: 'swallowing',
  chargeHeat: 'chargeHeat',
  workFactor: 'work',
  slip: 'slip',
};

/** What the input itself has of each. */
export const valuesOf = (input: MatchInput): Record<FitParameterId, number> => ({
  headScale: input.compressor.headScale,
  flowScale: input.compressor.flowScale ?? 1,
  swallowingScale: input.swallowing.scale,
  chargeHeat: input.charge.heatFactor,
  workFactor: input.work.factor,
  slip: input.drive.slip,
});

/** Whether a parameter is moved by adding and not by multiplying. */
export const isAdded = (id: FitParameterId): boolean => id === 'slip';
