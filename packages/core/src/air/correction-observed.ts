import type { CorrectionStandard } from './model.ts';

/** No correction: what the brake showed in the air of the day. */
export const correctionObserved: CorrectionStandard = {
  id: 'observed',
  name: 'Observed',
  referenceState: 'None: torque and power as the engine made them in the air of the day.',
  supercharged:
    'On a supercharged engine this is the figure to start from; no correction is made for its kind.',
  factor: () => 1,
  outsideValidity: () => [],
};
