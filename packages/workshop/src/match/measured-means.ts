import { commonSpeeds, observedFactor, readAt, type ViewedPull } from '@pullbook/core/airpath';
import { mean } from '@pullbook/core/numeric';
import type { ChannelMeaning } from '@pullbook/core/pull';
import type { MatchedCombination } from '@pullbook/views/match';

/** Means of a combination's own pulls as observed, to stand beside its match; `null`: it was never pulled. */
export function measuredMeans(pulls: readonly ViewedPull[]): MatchedCombination['measured'] {
  const usable = pulls.filter(({ pull, view }) => view.curve !== null && observedFactor(view, pull) !== null);
  if (usable.length === 0) return null;
  const engineSpeedRpm = commonSpeeds(usable);
  if (engineSpeedRpm.length === 0) return null;
  const meanOf = (meaning: ChannelMeaning, factorOf: (one: ViewedPull) => number): number[] => {
    const rows = usable.map((one) => {
      const factor = factorOf(one);
      return readAt(one.view, meaning, engineSpeedRpm).map((value) => value / factor);
    });
    return engineSpeedRpm.map((_, node) => mean(rows.map((row) => row[node]!)));
  };
  const corrected = (meaning: ChannelMeaning) =>
    meanOf(meaning, ({ pull, view }) => observedFactor(view, pull)!);
  const asRead = (meaning: ChannelMeaning) => {
    const values = meanOf(meaning, () => 1);
    return values.some(Number.isFinite) ? values : null;
  };
  return {
    pullIds: usable.map(({ pull }) => pull.id),
    engineSpeedRpm,
    power: corrected('power'),
    torque: corrected('torque'),
    boost: asRead('boost'),
    chargeTemperature: asRead('chargeTemperature'),
  };
}
