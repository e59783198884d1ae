import type { ComparedCombination, Comparison } from '../compare/index.ts';
import { mean } from '../numeric/mean.ts';
import type { Pull } from '../pull/index.ts';
import { percentFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Observation } from './observation.ts';
import { THRESHOLDS } from './thresholds.ts';

/** Fewer pulls in a row make no trend. */
const LEAST_PULLS = 3;

/** What moves pull by pull through the repeats of either side: power, by the comparison's own judgement, and charge. */
export function observedThroughRepeats(
  comparison: Comparison,
  { baseline, changed }: { baseline: ComparedCombination; changed: ComparedCombination },
  pulls: ReadonlyMap<string, Pull>,
): Observation[] {
  return [
    ...power(comparison, [baseline.key, changed.key]),
    ...[changed, baseline].flatMap((one) => charge(comparison, one, pulls)).slice(0, 1),
  ];
}

function power({ trends }: Comparison, keys: readonly string[]): Observation[] {
  const own = trends.filter(({ group }) => keys.includes(group));
  const seen = own.find(({ state }) => state === 'seen');
  if (seen !== undefined)
    return [
      {
        about: 'trend',
        state: seen.perPull > 0 ? 'up' : 'down',
        change: seen.perPull,
        text: said`Power ${seen.perPull > 0 ? 'rises' : 'falls'} ${percentFigure(Math.abs(seen.perPull), 1)} with every pull of ${seen.group}.`,
      },
    ];
  if (own.length === 0 || own.some(({ state }) => state === 'cannot-tell')) return [];
  return [
    { about: 'trend', state: 'same', change: null, text: said`No trend of power through the repeats.` },
  ];
}

/** Charge temperature that rises or falls with every single pull, in the order they were made. */
function charge(
  { averagesWindowRpm, engineSpeedRpm }: Comparison,
  { key, channels }: ComparedCombination,
  pulls: ReadonlyMap<string, Pull>,
): Observation[] {
  const [low, high] = averagesWindowRpm ?? [Number.NaN, Number.NaN];
  const timed = (channels.get('chargeTemperature')?.pulls ?? []).map(({ pullId, values }) => ({
    at: Date.parse(pulls.get(pullId)?.recordedAt ?? ''),
    kelvin: mean(
      values.filter(
        (value, node) =>
          engineSpeedRpm[node]! >= low && engineSpeedRpm[node]! <= high && Number.isFinite(value),
      ),
    ),
  }));
  if (timed.length < LEAST_PULLS || timed.some(({ at, kelvin }) => !Number.isFinite(at + kelvin))) return [];
  const kelvins = timed.toSorted((one, other) => one.at - other.at).map(({ kelvin }) => kelvin);
  const steps = kelvins.slice(1).map((kelvin, place) => kelvin - kelvins[place]!);
  const total = kelvins.at(-1)! - kelvins[0]!;
  const oneWay = steps.every((step) => step > 0) || steps.every((step) => step < 0);
  if (!oneWay || Math.abs(total) <= THRESHOLDS.chargeTemperature.least) return [];
  const figure = THRESHOLDS.chargeTemperature.figure(Math.abs(total));
  return [
    {
      about: 'chargeTrend',
      state: total > 0 ? 'up' : 'down',
      change: total,
      text: said`Charge ${total > 0 ? 'warmer' : 'cooler'} with every pull of ${key}, ${figure} in all.`,
    },
  ];
}
