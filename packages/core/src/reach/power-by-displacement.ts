import { type CombinationSheet, deriveFigures, isSupercharged } from '../combination/index.ts';
import { figureOf } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';

/**
 * W/m³, of gasoline engines without supercharger: what 97.5 of 100 of a fleet of 1985 exceeded, and 2.5 of 100 of a fleet of 2022 did (UCI-1985, EPA-OMEGA;
 * `checks/specific-output`). One fleet's ends hold few engines of the other, so the range goes from the one to the other.
 */
const SPECIFIC_OUTPUT = { low: 30e6, high: 86e6 };

/**
 * Power without supercharger that an engine may have by its displacement alone, W: all that can be said where nothing was pulled, and no basis for a plan. A rule
 * of thumb of production engines on gasoline.
 *
 * @param displacement m³
 * @example powerByDisplacement(3.8e-3) // { low: 114_000, high: 326_800 }
 */
export const powerByDisplacement = (displacement: number): { low: number; high: number } => ({
  low: SPECIFIC_OUTPUT.low * displacement,
  high: SPECIFIC_OUTPUT.high * displacement,
});

/** The same in a sentence beside the refusal of a search without a baseline; none where the sheet does not tell the displacement. */
export function powerByDisplacementRemark(sheet: CombinationSheet): Remark[] {
  const displacement = deriveFigures(sheet).find(({ id }) => id === 'displacement')?.value ?? null;
  if (displacement === null) return [];
  const { low, high } = powerByDisplacement(displacement);
  const power = (value: number) => figureOf(value, 'power', { decimals: 0 });
  const blown = isSupercharged(sheet) ? ' without its supercharger' : '';
  return [
    remark(
      'refusal',
      'power-by-displacement-alone',
      said`By its displacement alone it may make anything from ${power(low)} to ${power(high)}${blown}, a rule of thumb by production engines of 1985 and 2022: no basis for a plan.`,
    ),
  ];
}
