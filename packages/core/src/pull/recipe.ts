import type { CorrectionId } from '../air/index.ts';
import type { Recipe } from './model.ts';

/** The recipe a pull is viewed by unless something else is asked: adapted bins, no lags, window found, inertia left as it is. */
export function defaultRecipe(correction: CorrectionId = 'sae-j1349'): Recipe {
  return { correction, binWidthRpm: 'adapted', lags: {}, windowRpm: null, addInertia: false };
}
