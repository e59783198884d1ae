import { choleskyOf, mean, solveWith } from '../numeric/index.ts';
import { percentFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { SHARED_OVER_RPM } from './fitted-channels.ts';
import type { FitParameterId, FitResidual } from './model.ts';
import { PARAMETERS } from './parameters.ts';
import type { ChannelReadings } from './readings-on-nodes.ts';

/** Two parameters whose errors go together by more than this cannot be told apart. */
const TOGETHER = 0.8;

const NAMES: Record<FitParameterId, string> = {
  headScale: "the compressor's head",
  flowScale: "the flow of the compressor's map",
  swallowingScale: 'what the engine swallows',
  chargeHeat: "the charge's heat",
  workFactor: 'the work of the air (spark, mixture)',
  slip: "the belt's slip",
};

/** What would part a pair; in either order. */
const SETTLED_BY: Partial<Record<`${FitParameterId} ${FitParameterId}`, string>> = {
  'headScale slip': 'A shaft-speed pick-up on the supercharger would tell.',
  'swallowingScale workFactor': 'An air meter, or fuel flow with lambda, on the boosted pull would tell.',
  'headScale swallowingScale': 'Air flow, or fuel flow with lambda, on the boosted pull would tell.',
};

/** How much the readings of a curve count: neighbours share their error. */
export function effectiveNumber(channels: readonly ChannelReadings[]): Remark {
  const most = channels.reduce((best, one) => (one.readings.length > best.readings.length ? one : best));
  const target = most.readings[0]!.target;
  const speeds = most.readings.filter((one) => one.target === target).map(({ speedRpm }) => speedRpm);
  const correlation = speeds.map((one) =>
    speeds.map((other) => (one === other ? 1 : 0.9 * Math.exp(-Math.abs(one - other) / SHARED_OVER_RPM))),
  );
  const weights = solveWith(
    choleskyOf(correlation),
    speeds.map(() => 1),
  );
  const count = weights.reduce((sum, weight) => sum + weight, 0);
  return remark(
    'note',
    'fit-counts-curves',
    `Neighbouring speeds of a curve share their error: a whole curve counts as about ${Math.max(1, Math.round(count))} readings in the fit, however many rows it has.`,
  );
}

/** Said where pulls of other combinations stand in the same fit. */
export function fittedTogether(own: number, all: number): Remark[] {
  if (own === all) return [];
  return [
    remark(
      'note',
      'fitted-together',
      `Fitted together with ${all - own} ${all - own === 1 ? 'pull' : 'pulls'} of other combinations of this engine with the same supercharger: what unit and engine have in common rests on all ${all} pulls.`,
    ),
  ];
}

/** Share by which metered air may stand off the fitted one on the mean of a pull: two deviations of air by fuel and mixture (common practice, no source). */
const AIR_AWAY = 0.06;

/** Air of a meter, or of fuel and mixture, that boost and power do not agree with. */
export function airStandsAway(residuals: readonly FitResidual[]): Remark[] {
  const shares = residuals
    .filter(({ figure }) => figure === 'airFlow')
    .map(({ measured, matched }) => mean(measured.map((value, node) => value / matched[node]! - 1)));
  if (shares.length === 0) return [];
  const off = mean(shares);
  if (!(Math.abs(off) > AIR_AWAY)) return [];
  return [
    remark(
      'caution',
      'air-stands-away',
      said`The air that was metered, or reckoned from fuel and mixture, is ${percentFigure(Math.abs(off), 1)} ${off < 0 ? 'less' : 'more'} than boost and power ask for in the fitted match; up to ${percentFigure(AIR_AWAY)} is usual. Check the air or fuel meter and lambda on the boosted pulls; what the engine swallows is known less well than its band says.`,
    ),
  ];
}

/** Pairs of parameters that the readings leave tied to each other. */
export function cannotBeToldApart(
  covariance: readonly number[][],
  channels: readonly ChannelReadings[],
): Remark[] {
  const remarks: Remark[] = [];
  const measured = new Set(channels.map(({ channel }) => channel.channel));
  const add = (one: FitParameterId, other: FitParameterId) => {
    const settled = SETTLED_BY[`${one} ${other}`] ?? SETTLED_BY[`${other} ${one}`] ?? '';
    remarks.push(
      remark(
        'caution',
        'cannot-be-told-apart',
        `In these pulls ${NAMES[one]} and ${NAMES[other]} cannot be told apart: a little more of one does what a little less of the other does. Together they are known better than each by itself. ${settled}`.trim(),
      ),
    );
  };
  for (let i = 0; i < PARAMETERS.length; i++) {
    for (let j = 0; j < i; j++) {
      const together = Math.abs(covariance[i]![j]!) / Math.sqrt(covariance[i]![i]! * covariance[j]![j]!);
      if (together > TOGETHER) add(PARAMETERS[j]!, PARAMETERS[i]!);
    }
  }
  if (
    !measured.has('impellerSpeedRpm') &&
    covariance[OF_SLIP]![OF_SLIP]! > LEAST_SLIP_VARIANCE &&
    remarks.every(({ message }) => !message.includes(NAMES.slip))
  )
    add('headScale', 'slip');
  return remarks;
}

const OF_SLIP = PARAMETERS.indexOf('slip');
/** Of a drive that can slip at all: 0.1 %. */
const LEAST_SLIP_VARIANCE = 1e-6;
