import type { Cell } from '../pull/index.ts';
import type { CountedPull } from './condition.ts';
import { conditionsOfAir } from './conditions-of-air.ts';
import { conditionsOfCalibration } from './conditions-of-calibration.ts';
import { conditionsOfOccasion } from './conditions-of-occasion.ts';
import { conditionsOfReading } from './conditions-of-reading.ts';
import { conditionsOfTemperature } from './conditions-of-temperature.ts';
import { conditionsOfTreatment } from './conditions-of-treatment.ts';
import { conditionsOfTune } from './conditions-of-tune.ts';
import type { ConditionDifference } from './model.ts';

/**
 * Every condition beside the parts in which the counted pulls differ, or may. Parts are told by the trial, which knows the
 * combinations. `windowRpm` is where channels are compared; `ownViews` are the pulls as they were before they were brought
 * to one bin width; `cells` those that are described.
 */
export function conditionsOf(
  pulls: readonly CountedPull[],
  ownViews: readonly CountedPull[],
  windowRpm: readonly [number, number] | null,
  cells: readonly Cell[],
): ConditionDifference[] {
  const boosted = pulls.some(({ view }) => view.curve?.channels.has('boost') ?? false);
  return [
    ...conditionsOfAir(pulls),
    ...conditionsOfTemperature(pulls, boosted),
    ...conditionsOfTune(pulls, windowRpm),
    ...conditionsOfReading(pulls, ownViews, boosted),
    ...conditionsOfTreatment(pulls),
    ...conditionsOfOccasion(pulls),
    ...conditionsOfCalibration(pulls, cells),
  ];
}
