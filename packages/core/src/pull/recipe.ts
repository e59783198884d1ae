import type { CorrectionId } from '../air/index.ts';
import type { Recipe } from './model.ts';

/** The recipe that asks for nothing but a correction: bins, lags, window and inertia are as the pull's own treatment has them. */
export function defaultRecipe(correction: CorrectionId = 'sae-j1349'): Recipe {
  return { correction, binWidthRpm: 'adapted', lags: {}, windowRpm: null, addInertia: false };
}
