import { type Baseline, commonSpeeds, observedFactor, readAt, type ViewedPull } from '../airpath/index.ts';
import { fingerprintOfCurves, interpolateLinear, mean } from '../numeric/index.ts';
import { figureOf, percentFigure } from '../quantity/index.ts';
import { accepted, type Remark, type Result, refused, remark, said } from '../remark/index.ts';
import type { ScaledBaseline } from './model.ts';

export interface ToScale {
  /** The nearest measured one. */
  of: Baseline;
  /** As said on the page: `base cam, without supercharger`. */
  nearest: string;
  /** What was changed, measured with one and the other; may have been under boost. */
  pair: { before: readonly ViewedPull[]; after: readonly ViewedPull[]; what: string; underBoost: boolean };
}

/** Share of a gain that stays open because it was seen under boost and is used without, one deviation (common practice, no source). */
const OPEN_OF_GAIN = 0.3;
/** Of the means of a pair on different days, and of the baseline itself, one deviation (common practice, no source). */
const SPREAD_OF_PAIR = 0.01;
/** One change between two pulls makes no more than this (common practice, no source). */
const LIKELY = { low: 0.6, high: 1.6 };
const TWO_SIDED_95 = 1.96;

/**
 * A curve that stands in for a naturally aspirated pull that was never made: the nearest measured one, scaled at each speed by what a measured
 * pair of pulls gained. Power, air and what friction leaves are scaled by the ratio of indicated power. Its band holds the pair's scatter and
 * that a gain under boost is not the gain without. Labelled scaled, never measured.
 */
export function scaleBaseline({ of, nearest, pair }: ToScale): Result<ScaledBaseline> {
  if (pair.before.length === 0 || pair.after.length === 0) return refused(noPair(pair.what));
  const all = [...pair.before, ...pair.after];
  const unknown = all.find(({ pull, view }) => observedFactor(view, pull) === null);
  if (unknown !== undefined) return refused(factorUnknown(unknown.pull.name));
  const sameIds = pair.before.filter(({ pull }) => pair.after.some((other) => other.pull.id === pull.id));
  if (sameIds.length > 0) return refused(onBothSides(sameIds[0]!.pull.name));

  const speeds = commonSpeeds(all);
  if (speeds.length < 2) return refused(noCommonSpeeds(pair.what));
  const standards = new Set(all.map(({ view }) => view.correction.standard));
  const isOneStandard = standards.size === 1 && all.every(({ view }) => view.correction.reached);
  const before = powersOf(pair.before, speeds, isOneStandard);
  const after = powersOf(pair.after, speeds, isOneStandard);
  const ratio = speeds.map((_, node) => after.mean[node]! / before.mean[node]!);
  const odd = ratio.findIndex((one) => !(one > LIKELY.low && one < LIKELY.high));
  if (odd >= 0) return refused(nonsense(pair.what, speeds[odd]!, ratio[odd]!));

  const nodes = of.engineSpeedRpm.flatMap((speed, node) =>
    Number.isFinite(interpolateLinear(speeds, ratio, speed)) ? [node] : [],
  );
  if (nodes.length < 2) return refused(noCommonSpeeds(pair.what));
  const pick = (values: readonly number[]) => nodes.map((node) => values[node]!);
  const at = pick(of.engineSpeedRpm);
  const gain = at.map((speed) => interpolateLinear(speeds, ratio, speed));
  const scatter = at.map((speed) => interpolateLinear(speeds, scatterOf(before, after), speed));
  const friction = pick(of.frictionPower);
  const brakePower = pick(of.brakePower).map((power, node) => power * gain[node]!);
  const airFlow = pick(of.airFlow).map((flow, node) => {
    const indicated = of.brakePower[nodes[node]!]! + friction[node]!;
    return (flow * (brakePower[node]! + friction[node]!)) / indicated;
  });
  const openOfGain = pair.underBoost ? OPEN_OF_GAIN : 0;
  const spread = gain.map((one, node) =>
    Math.hypot(openOfGain * Math.abs(Math.log(one)), scatter[node]!, SPREAD_OF_PAIR),
  );
  const edge = (sign: 1 | -1) =>
    brakePower.map((power, node) => power * Math.exp(sign * TWO_SIDED_95 * spread[node]!));
  const widest = TWO_SIDED_95 * Math.max(...spread);
  const basis = said`Scaled, not measured: ${nearest}, times what ${pair.what} gained${pair.underBoost ? ' under boost' : ''} at each speed (${percentFigure(mean(gain) - 1, 1)} on average), good to ±${percentFigure(widest, 0)}.`;
  return accepted({
    baseline: {
      ...of,
      engineSpeedRpm: at,
      brakePower,
      airFlow,
      frictionPower: friction,
      manifoldPressure: pick(of.manifoldPressure),
      manifoldTemperature: pick(of.manifoldTemperature),
      lambda: of.lambda === null ? null : pick(of.lambda),
      origin: 'scaled',
      pullIds: [...of.pullIds, ...all.map(({ pull }) => pull.id)],
      mark: fingerprintOfCurves(at, brakePower, airFlow),
    },
    power: { low: edge(-1), high: edge(1) },
    basis,
    remarks: [remark('caution', 'baseline-scaled', basis), ...(isOneStandard ? [] : airsDiffer(all))],
  });
}

interface Powers {
  mean: number[];
  /** Variance of the mean's logarithm by the scatter of repeats; 0 of a single pull. */
  variance: number[];
}

/** In the standard of the views where all are in one, so that weather does not count as gain; else as observed. */
function powersOf(pulls: readonly ViewedPull[], speeds: readonly number[], isOneStandard: boolean): Powers {
  const rows = pulls.map(({ pull, view }) => {
    const factor = isOneStandard ? 1 : observedFactor(view, pull)!;
    return readAt(view, 'power', speeds).map((power) => power / factor);
  });
  const means = speeds.map((_, node) => mean(rows.map((row) => row[node]!)));
  const variance = speeds.map((_, node) => {
    if (rows.length < 2) return 0;
    const squares = rows.reduce((sum, row) => sum + (row[node]! / means[node]! - 1) ** 2, 0);
    return squares / (rows.length * (rows.length - 1));
  });
  return { mean: means, variance };
}

const scatterOf = (before: Powers, after: Powers): number[] =>
  before.variance.map((one, node) => Math.sqrt(one + after.variance[node]!));

/** Observed powers carry their weather: K by which the two sides of a pair may differ (common practice, no source). */
const AIRS_ALIKE = 5;

function airsDiffer(all: readonly ViewedPull[]): Remark[] {
  const temperatures = all.flatMap(({ pull }) => (pull.weather === null ? [] : [pull.weather.temperature]));
  const apart = Math.max(...temperatures) - Math.min(...temperatures);
  if (!(apart > AIRS_ALIKE)) return [];
  return [
    remark(
      'caution',
      'pair-in-other-air',
      said`The pulls of the pair were made in airs ${figureOf(apart, 'temperatureDifference')} apart; some of the gain may be weather.`,
    ),
  ];
}

const noPair = (what: string) =>
  remark(
    'refusal',
    'no-pair',
    `There is no measured pair for ${what}: pulls with one and the other are needed.`,
  );

const noCommonSpeeds = (what: string) =>
  remark(
    'refusal',
    'pair-without-common-speeds',
    `The pulls of ${what} and the pull without supercharger share no engine speeds. Sweep them over the same range.`,
  );

const onBothSides = (name: string) =>
  remark(
    'refusal',
    'pair-of-one',
    `${name} stands on both sides of the pair; a pull cannot be its own gain.`,
  );

const factorUnknown = (name: string) =>
  remark(
    'refusal',
    'pair-factor-unknown',
    `${name} was corrected by a factor that is not known. Enter the factor, or take another pull of the pair.`,
  );

const nonsense = (what: string, speed: number, ratio: number) =>
  remark(
    'refusal',
    'pair-nonsense',
    said`At ${figureOf(speed, 'engineSpeed')} the pair for ${what} makes ${percentFigure(ratio)} of the power; between ${percentFigure(LIKELY.low)} and ${percentFigure(LIKELY.high)} one change is likely. Is one of the two with and the other without the supercharger?`,
  );
