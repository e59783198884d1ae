import { CORRECTIONS, type CorrectionId } from '@pullbook/core/air';
import { defaultRecipe, type Pull, type Recipe } from '@pullbook/core/pull';

/** The recipe that leaves torque and power as the file carries them. */
export function asCarried(pull: Pick<Pull, 'carried'>): Recipe {
  const { standard } = pull.carried;
  return defaultRecipe(standard in CORRECTIONS ? (standard as CorrectionId) : 'observed');
}
