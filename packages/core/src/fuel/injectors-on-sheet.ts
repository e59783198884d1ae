import { type CombinationSheet, sheetNumber, sheetValue } from '../combination/index.ts';
import { figureOf, toInside } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { deadTimeAt } from './injectors.ts';
import type { Injectors } from './model.ts';
import { SUBSTANCES } from './substances.ts';

/** V that pump and injectors get with the engine running (common practice, no source). */
export const USUAL_VOLTAGE = 13.5;
/** Pa at which injectors are usually told: 3 bar, 43.5 psi (common practice, no source). */
export const USUAL_RATED_PRESSURE = toInside(3, 'bar', 'pressureDifference');

/** Injectors of a sheet; what is taken for what it does not tell is added to `taken`. `null`: no flow is on it. */
export function injectorsOn(sheet: CombinationSheet, taken: Remark[]): Injectors | null {
  const told = sheetValue(sheet, 'fuelSystem', 'injectorFlow');
  if (told === null || told.value === null || !(told.value > 0)) return null;
  const count = countOn(sheet, taken);
  if (count === null) return null;
  // Makers tell what passes of a test fluid about as dense as gasoline; of another fuel the root of density more or less passes.
  const ratedDensity = SUBSTANCES.gasoline.density;
  const rated = sheetNumber(sheet, 'fuelSystem', 'injectorFlowPressure');
  if (rated === null)
    taken.push(
      remark(
        'caution',
        'injector-pressure-assumed',
        said`The injectors’ flow has no pressure on the sheet; ${figureOf(USUAL_RATED_PRESSURE, 'pressureDifference')} is taken, at which it is usually told (common practice, no source). Put it under fuelSystem, injectorFlowPressure.`,
      ),
    );
  const deadTime = sheetNumber(sheet, 'fuelSystem', 'injectorDeadTime');
  const voltage = sheetNumber(sheet, 'fuelSystem', 'systemVoltage') ?? USUAL_VOLTAGE;
  return {
    count,
    flow: told.kind === 'massFlow' ? told.value : told.value * ratedDensity,
    ratedDensity,
    ratedPressure: rated ?? USUAL_RATED_PRESSURE,
    deadTime: deadTime === null ? null : deadTimeAt(deadTime, voltage),
  };
}

function countOn(sheet: CombinationSheet, taken: Remark[]): number | null {
  const told = sheetNumber(sheet, 'fuelSystem', 'injectors');
  if (told !== null) return told;
  const cylinders = sheetNumber(sheet, 'shortBlock', 'cylinders');
  taken.push(
    cylinders === null
      ? remark(
          'caution',
          'injector-count-missing',
          'How many injectors there are is not on the sheet, nor how many cylinders; so nothing is said of them. Put it under fuelSystem, injectors.',
        )
      : remark(
          'note',
          'injector-count-assumed',
          said`How many injectors there are is not on the sheet; one a cylinder is taken, ${cylinders}. Put it under fuelSystem, injectors.`,
        ),
  );
  return cylinders;
}
