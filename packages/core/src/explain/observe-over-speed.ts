import type { Comparison, Gain } from '../compare/index.ts';
import { mean } from '../numeric/mean.ts';
import { percentFigure, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Observation } from './observation.ts';
import { stateOf } from './observe-channel.ts';
import { CONSTANT_WITHIN, CROSSOVER_LEAST } from './thresholds.ts';

/** How the gain lies over engine speed: constant in per cent or not, and where it changes sign for good. */
export function observedOverSpeed(comparison: Comparison, gain: Gain): Observation[] {
  return [...shape(comparison, gain), ...crossover(comparison, gain)];
}

/** The upper third of the averages' window against the lower. `up`: the gain grows with speed. */
function shape(comparison: Comparison, gain: Gain): Observation[] {
  const [low, high] = comparison.averagesWindowRpm ?? [Number.NaN, Number.NaN];
  const third = (high - low) / 3;
  const bottom = ratioBetween(comparison, gain, low, low + third);
  const top = ratioBetween(comparison, gain, high - third, high);
  if (bottom === null || top === null) return [];
  const state = stateOf(top - bottom, CONSTANT_WITHIN);
  const ends = said`${percentFigure(bottom, 1)} at the bottom, ${percentFigure(top, 1)} at the top`;
  return [
    {
      about: 'shape',
      state,
      change: top - bottom,
      text:
        state === 'same'
          ? said`The same per cent at all speeds: ${ends}.`
          : said`${state === 'up' ? 'More towards the top' : 'Less towards the top'}: ${ends}.`,
    },
  ];
}

/** Over the common window. `up`: less below, more above. */
function crossover(comparison: Comparison, gain: Gain): Observation[] {
  const window = comparison.commonWindowRpm;
  if (window === null) return [];
  const [low, high] = window;
  const sides = gain.crossoversRpm.map((atRpm) => ({
    atRpm,
    below: ratioBetween(comparison, gain, low, atRpm),
    above: ratioBetween(comparison, gain, atRpm, high),
  }));
  const found = sides.find(
    ({ below, above }) =>
      below !== null &&
      above !== null &&
      below * above < 0 &&
      Math.min(Math.abs(below), Math.abs(above)) >= CROSSOVER_LEAST,
  );
  if (found === undefined)
    return [
      {
        about: 'crossover',
        state: 'same',
        change: null,
        text: said`No speed at which a loss of ${percentFigure(CROSSOVER_LEAST)} turns into a gain, or a gain into a loss.`,
      },
    ];
  const { atRpm, below, above } = found;
  const at = speedFigure(10 * Math.round(atRpm / 10));
  return [
    {
      about: 'crossover',
      state: above! > 0 ? 'up' : 'down',
      change: null,
      text: said`${percentFigure(below!, 1)} below ${at}, ${percentFigure(above!, 1)} above.`,
    },
  ];
}

/** Mean gain over mean baseline power between two speeds; `null`: no figure there. */
function ratioBetween(
  { engineSpeedRpm, combinations }: Comparison,
  gain: Gain,
  low: number,
  high: number,
): number | null {
  const baseline = combinations.find(({ key }) => key === gain.baselineKey)?.channels.get('power')?.mean;
  if (baseline === undefined) return null;
  const nodes = [...engineSpeedRpm.keys()].filter(
    (node) =>
      engineSpeedRpm[node]! >= low && engineSpeedRpm[node]! <= high && Number.isFinite(gain.power[node]!),
  );
  if (nodes.length === 0) return null;
  return mean(nodes.map((node) => gain.power[node]!)) / mean(nodes.map((node) => baseline[node]!));
}
