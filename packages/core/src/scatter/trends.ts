import { studentTQuantile } from '../numeric/index.ts';
import type { Design } from './design-of-pulls.ts';
import type { PullArray, ScatterHistory, Trend } from './model.ts';
import { moderate } from './moderate.ts';
import { type SpreadsAtHand, spreadOf } from './spreads-at-hand.ts';

const FEWEST_PULLS = 4;
/** Three pulls can tell where the waits before them differ by more than this factor. */
const FEWEST_WITH_WAITS = 3;
const WAITS_DIFFER = 1.5;

/**
 * Fall or rise through the pulls of one combination in one set-up, as a share of power a pull, by least squares over their
 * order in time (the order given where a time is not known). Its band stands on the pulls' scatter about what they share once
 * this trend is out of it, moderated by history. Fewer than four pulls cannot tell soak from scatter, unless three had waits
 * that differ (from memory of the trade).
 */
export function trendsOf(
  pulls: readonly PullArray[],
  design: Design,
  logMean: Float64Array,
  history: ScatterHistory,
  { residual }: SpreadsAtHand,
): Trend[] {
  return design.units.names.flatMap((_, unit) => {
    const own = inOrder(
      pulls,
      Array.from(pulls.keys()).filter((pull) => design.units.of[pull] === unit),
    );
    if (own.length < 2) return [];
    const middle = (own.length - 1) / 2;
    const spread = own.reduce((sum, __, place) => sum + (place - middle) ** 2, 0);
    const perPull = own.reduce((sum, pull, place) => sum + ((place - middle) * logMean[pull]!) / spread, 0);
    const scatter = moderate(
      history.pull,
      design.takenOut.length > 0
        ? spreadOf(residual.squares, residual.degreesOfFreedom)
        : spreadOf(Math.max(0, residual.squares - perPull ** 2 * spread), residual.degreesOfFreedom - 1),
    );
    const half = (studentTQuantile(0.975, scatter.degreesOfFreedom) * scatter.sigma) / Math.sqrt(spread);
    const [low, high] = [perPull - half, perPull + half];
    const { group, setUp } = pulls[own[0]!]!;
    return [
      {
        group,
        setUp,
        pulls: own.length,
        perPull: Math.expm1(perPull),
        low: Math.expm1(low),
        high: Math.expm1(high),
        state: !canTell(pulls, own) ? 'cannot-tell' : low > 0 || high < 0 ? 'seen' : 'not-seen',
      } satisfies Trend,
    ];
  });
}

function inOrder(pulls: readonly PullArray[], own: readonly number[]): number[] {
  const hours = (pull: number) => pulls[pull]!.hours ?? Number.NaN;
  return own.every((pull) => Number.isFinite(hours(pull)))
    ? [...own].sort((one, other) => hours(one) - hours(other))
    : [...own];
}

function canTell(pulls: readonly PullArray[], own: readonly number[]): boolean {
  if (own.length >= FEWEST_PULLS) return true;
  if (own.length < FEWEST_WITH_WAITS) return false;
  const waits = own
    .slice(1)
    .map((pull, place) => (pulls[pull]!.hours ?? Number.NaN) - (pulls[own[place]!]!.hours ?? Number.NaN));
  return waits.every((wait) => wait > 0) && Math.max(...waits) > WAITS_DIFFER * Math.min(...waits);
}
