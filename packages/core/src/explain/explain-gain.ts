import { type CombinationSheet, isSupercharged } from '../combination/index.ts';
import type { Comparison, Gain } from '../compare/index.ts';
import { mean } from '../numeric/mean.ts';
import { explain } from './explain.ts';
import type { Explanation } from './model.ts';
import type { ExplainInput } from './observation.ts';
import { type Explained, observationsOf } from './observations-of.ts';
import { averagesOf } from './observe-channel.ts';
import { observedWithoutSupercharger } from './without-supercharger.ts';

/** Why one gain of a comparison came out as it did, from everything that was measured on both sides. */
export function explainGain(explained: Explained): Explanation {
  const { comparison, gain, changes, sheets, lineRuns = null } = explained;
  const pressureRatio = pressureRatioOf(explained);
  const baseline = comparison.combinations.find(({ key }) => key === gain.baselineKey);
  const meanBoost = baseline === undefined ? Number.NaN : mean(averagesOf(comparison, baseline, 'boost'));
  return explain({
    changedKey: gain.changedKey,
    verdict: gain.verdict?.word ?? null,
    observations: [
      ...observationsOf(explained),
      ...observedWithoutSupercharger(comparison, gain, sheets, pressureRatio),
    ],
    changes,
    charger: chargerOf(comparison, gain, sheets),
    pressureRatio,
    lineRuns,
    boostRatio: gain.meanBoost !== null && meanBoost > 0 ? gain.meanBoost / meanBoost : null,
  });
}

/** By the sheets of both sides, else by whether boost was measured. */
function chargerOf(
  comparison: Comparison,
  gain: Gain,
  sheets: ReadonlyMap<string, CombinationSheet>,
): ExplainInput['charger'] {
  const both = [gain.baselineKey, gain.changedKey];
  const known = both.map((key) => sheets.get(key));
  const [before, after] = both.map((key, side) => {
    const sheet = known[side];
    if (sheet !== undefined) return isSupercharged(sheet);
    const boost = comparison.combinations.find((one) => one.key === key)?.averages.get('boost');
    return boost !== undefined && boost > LEAST_BOOST;
  });
  if (!before && !after) return 'none';
  if (!before) return 'fitted';
  if (!after) return 'taken-off';
  return known.some((sheet) => sheet?.sections.supercharger?.type?.text === 'turbocharger')
    ? 'turbocharger'
    : 'mechanical';
}

/** From here on a mean of gauge pressure is boost, Pa. Our choice. */
const LEAST_BOOST = 5e3;

/** Mean of the baseline's pulls; `null`: no boost, or the air was not noted. */
function pressureRatioOf({ comparison, gain, pulls }: Explained): number | null {
  const baseline = comparison.combinations.find(({ key }) => key === gain.baselineKey);
  if (baseline === undefined) return null;
  const boost = mean(averagesOf(comparison, baseline, 'boost'));
  const ambient = mean(baseline.pullIds.map((id) => pulls.get(id)?.weather?.pressure ?? Number.NaN));
  const ratio = 1 + boost / ambient;
  return Number.isFinite(ratio) && boost > LEAST_BOOST ? ratio : null;
}
