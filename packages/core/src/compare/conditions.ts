import type { Cell } from '../pull/index.ts';
import type { CountedPull } from './condition.ts';
import { conditionsOfAir } from './conditions-of-air.ts';
import { conditionsOfCalibration } from './conditions-of-calibration.ts';
import { conditionsOfFuel } from './conditions-of-fuel.ts';
import { conditionsOfOccasion } from './conditions-of-occasion.ts';
import { conditionsOfOrder } from './conditions-of-order.ts';
import { conditionsOfParts } from './conditions-of-parts.ts';
import { conditionsOfReading } from './conditions-of-reading.ts';
import { conditionsOfTemperature } from './conditions-of-temperature.ts';
import { conditionsOfTreatment } from './conditions-of-treatment.ts';
import { conditionsOfTune } from './conditions-of-tune.ts';
import type { ComparedBeside, ConditionDifference } from './model.ts';

/**
 * Everything in which the counted pulls differ, or may, with its rule: parts, fuel, air, temperatures, tune, reading, order
 * and occasion. `windowRpm` is where channels are compared; `ownViews` are the pulls as they were before they were brought
 * to one bin width; `cells` those that are described; `beside` the sheets and the other pulls of the sessions, where known.
 */
export function conditionsOf(
  pulls: readonly CountedPull[],
  ownViews: readonly CountedPull[],
  windowRpm: readonly [number, number] | null,
  cells: readonly Cell[],
  beside: ComparedBeside | null = null,
): ConditionDifference[] {
  const boosted = pulls.some(({ view }) => view.curve?.channels.has('boost') ?? false);
  return [
    ...(beside === null ? [] : [...conditionsOfParts(pulls, beside), ...conditionsOfFuel(pulls, beside)]),
    ...conditionsOfAir(pulls, boosted),
    ...conditionsOfTemperature(pulls, boosted),
    ...conditionsOfTune(pulls, windowRpm),
    ...conditionsOfReading(pulls, ownViews, boosted),
    ...conditionsOfTreatment(pulls),
    ...conditionsOfOrder(pulls, beside?.pulls ?? [], boosted),
    ...conditionsOfOccasion(pulls),
    ...conditionsOfCalibration(pulls, cells),
  ];
}
