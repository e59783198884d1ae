import type { Pull, PullView } from '../pull/index.ts';
import type { KnownVariance, ScatterHistory, Spread } from '../scatter/index.ts';
import { aroundGain } from './around-gain.ts';
import { hasPower } from './combination-on-nodes.ts';
import type { ComparedCombination, ComparedInput, PeakGain } from './model.ts';
import { halfWidth } from './peak-bands.ts';

/** Of a printed or remembered figure, one standard deviation: it is rounded, and read off (from memory of the trade). */
const READING: KnownVariance = { variance: 0.01 ** 2, degreesOfFreedom: 10 };
/** As far as two usual standards of correction lie apart. */
const BETWEEN_STANDARDS = 0.04;

/**
 * Highest figures against the baseline's where one of the two is only a printed or remembered peak. The band has the scatter of
 * pulls, of set-ups, days and cells that are not known to be the same, 1 % for a printed figure, and 4 % on top where the two
 * are not known to be in one standard.
 */
export function peakGainsOf(
  inputs: readonly ComparedInput[],
  combinations: readonly ComparedCombination[],
  baselineKey: string | null,
  history: ScatterHistory,
): PeakGain[] {
  const sides = inputs.map((input, place) => sideOf(input, combinations[place]!));
  const before = sides.find(({ key }) => key === baselineKey);
  if (before === undefined) return [];
  return sides.flatMap((after) => {
    const [peakBefore, peakAfter] = [before.peak, after.peak];
    if (after === before || (before.hasCurve && after.hasCurve)) return [];
    if (peakBefore === null || peakAfter === null) return [];
    const alike = (read: (pull: Pull) => string | null) => isOne(before, after, read);
    const offset = (spread: Spread, isSame: boolean): KnownVariance => ({
      variance: isSame ? 0 : 2 * spread.sigma ** 2,
      degreesOfFreedom: spread.degreesOfFreedom,
    });
    const oneStandard = isOneStandard([...before.views, ...after.views]);
    const half =
      halfWidth([
        ...ownVariances([before, after], history),
        offset(
          history.setUp,
          alike(({ setUpId }) => setUpId),
        ),
        offset(
          history.day,
          alike(({ recordedAt }) => recordedAt?.slice(0, 10) ?? null),
        ),
        offset(history.cell, sameCell(before, after)),
      ]) + (oneStandard ? 0 : BETWEEN_STANDARDS);
    const gain = peakAfter - peakBefore;
    const [low, high] = aroundGain(gain, peakBefore, half);
    return [
      {
        baselineKey: before.key,
        changedKey: after.key,
        gain,
        low,
        high,
        why: whyOf(before, after, oneStandard),
      },
    ];
  });
}

interface Side {
  key: string;
  hasCurve: boolean;
  peak: number | null;
  pulls: Pull[];
  views: PullView[];
}

/** The pulls its highest figure is of: those with curves, where it has any. */
function sideOf(input: ComparedInput, { key, peakPower }: ComparedCombination): Side {
  const withCurves = input.pulls.filter(({ view }) => hasPower(view));
  const counted =
    withCurves.length > 0 ? withCurves : input.pulls.filter(({ view }) => view.peakPower !== null);
  return {
    key,
    hasCurve: withCurves.length > 0,
    peak: peakPower?.value ?? null,
    pulls: counted.map(({ pull }) => pull),
    views: counted.map(({ view }) => view),
  };
}

/** What each side scatters by of its own; a spread is one and known once, so both sides of it are one part. */
function ownVariances(sides: readonly Side[], { pull, within }: ScatterHistory): KnownVariance[] {
  const means = sides.reduce((sum, { pulls }) => sum + 1 / pulls.length, 0);
  const of = ({ sigma, degreesOfFreedom }: Spread): KnownVariance => ({
    variance: sigma ** 2 * means,
    degreesOfFreedom,
  });
  const printed = sides.filter(({ hasCurve }) => !hasCurve).length;
  return [of(pull), of(within), { ...READING, variance: printed * READING.variance }];
}

/** Whether all pulls of both sides are noted as of one: what is not noted is not known to be. */
function isOne(before: Side, after: Side, read: (pull: Pull) => string | null): boolean {
  const noted = new Set([...before.pulls, ...after.pulls].map(read));
  return noted.size === 1 && !noted.has(null);
}

/** A shop that never names its cell has one. */
const sameCell = (before: Side, after: Side): boolean =>
  new Set([...before.pulls, ...after.pulls].map(({ cell }) => cell)).size === 1;

function isOneStandard(views: readonly PullView[]): boolean {
  const standards = new Set(views.map(({ correction }) => correction.standard));
  return standards.size === 1 && !standards.has('unknown') && !standards.has('not stated');
}

function whyOf(before: Side, after: Side, oneStandard: boolean): string {
  const printed = [before, after].filter((side) => !side.hasCurve).map(({ key }) => key);
  const standard = oneStandard ? '' : ' They are not known to be in one standard, which adds 4 %.';
  return (
    `Of ${printed.join(' and ')} only a printed or remembered highest figure is known, taken as good to 1 %.` +
    `${standard} It says nothing of the average, of any other speed, or of where one gains and the other loses.`
  );
}
