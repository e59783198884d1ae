import {
  airOfPull,
  airOfViewedPull,
  commonSpeeds,
  observedFactor,
  readAt,
  type ViewedPull,
} from '../airpath/index.ts';
import type { CombinationSheet } from '../combination/index.ts';
import type { ChannelMeaning } from '../pull/index.ts';
import { accepted, type Result, refused, remark } from '../remark/index.ts';
import type { BoostedPull } from './model.ts';

/**
 * A boosted pull as a fit sees it: power as observed (a carried factor is taken out), the channels it logged, air by what was measured.
 *
 * @example boostedPullOf({ pull, view: viewPull(pull, defaultRecipe('observed')) }, sheet)
 */
export function boostedPullOf({ pull, view }: ViewedPull, sheet: CombinationSheet): Result<BoostedPull> {
  const factor = observedFactor(view, pull);
  if (factor === null) return refused(factorUnknown(pull.name));
  const engineSpeedRpm = commonSpeeds([{ pull, view }]);
  if (engineSpeedRpm.length === 0) return refused(noCurve(pull.name));
  const air = airOfViewedPull({ pull, view });
  if (!air.ok) return air;
  const read = (meaning: ChannelMeaning): number[] | null =>
    view.curve?.channels.has(meaning) ? readAt(view, meaning, engineSpeedRpm) : null;
  const channels = new Map(
    [...(view.curve?.channels.keys() ?? [])].map((meaning) => [
      meaning,
      readAt(view, meaning, engineSpeedRpm),
    ]),
  );
  const swallowed = airOfPull(channels, { sheet, tune: pull.tune, boosted: true });
  return accepted(
    {
      pullId: pull.id,
      engineSpeedRpm,
      brakePower: readAt(view, 'power', engineSpeedRpm).map((power) => power / factor),
      boost: read('boost'),
      chargeTemperature: read('chargeTemperature'),
      dischargeTemperature: read('dischargeTemperature'),
      airFlow: swallowed?.airFlow ?? null,
      impellerSpeedRpm: read('impellerSpeed'),
      air: air.value,
    },
    swallowed?.remarks ?? [],
  );
}

const factorUnknown = (name: string) =>
  remark(
    'refusal',
    'boosted-factor-unknown',
    `${name} was corrected by a factor that is not known, and a fit needs the power as observed. Enter the factor of the pull, or fit to another.`,
  );

const noCurve = (name: string) =>
  remark(
    'refusal',
    'boosted-without-curve',
    `${name} has no power over engine speed, so nothing can be fitted to it. Take a logged pull.`,
  );
