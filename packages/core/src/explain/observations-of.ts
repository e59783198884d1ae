import type { CombinationSheet, PartChange } from '../combination/index.ts';
import type { ComparedCombination, Comparison, Gain } from '../compare/index.ts';
import type { Pull } from '../pull/index.ts';
import { figureOf, parseQuantity, percentFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { driveRatio } from './drive-ratio.ts';
import type { Observation } from './observation.ts';
import { type ChannelChange, channelChange, observed, stateOf } from './observe-channel.ts';
import { observedOverSpeed } from './observe-over-speed.ts';
import { observedThroughRepeats } from './observe-through-repeats.ts';
import { FACTORS_APART, THRESHOLDS } from './thresholds.ts';
import type { SlopeWord } from './why-boost-moved.ts';

/** One gain with what is known of its two sides. */
export interface Explained {
  comparison: Comparison;
  gain: Gain;
  /** Lines changed from the baseline; `null`: a sheet is missing. */
  changes: readonly PartChange[] | null;
  /** By key of the combination: `A`, `B`; a sheet that is not known is missing. */
  sheets: ReadonlyMap<string, CombinationSheet>;
  /** By id, for the tune as noted and the order of the repeats. */
  pulls: ReadonlyMap<string, Pull>;
  /** How the speed line runs where the changed combination makes its boost, by a match; missing: none is at hand. */
  lineRuns?: SlopeWord | null;
}

/** What can be seen of a change: power, and everything else that was measured on both sides. */
export function observationsOf(explained: Explained): Observation[] {
  const sides = sidesOf(explained);
  if (sides === null) return [];
  return [
    power(explained),
    ...observedOverSpeed(explained.comparison, explained.gain),
    ...boost(explained, sides),
    ...channels(explained.comparison, sides),
    ...spark(explained, sides),
    ...drive(explained, sides),
    ...observedThroughRepeats(explained.comparison, sides, explained.pulls),
    correction(explained.comparison),
  ];
}

interface Sides {
  baseline: ComparedCombination;
  changed: ComparedCombination;
}

function sidesOf({ comparison: { combinations }, gain }: Explained): Sides | null {
  const baseline = combinations.find(({ key }) => key === gain.baselineKey);
  const changed = combinations.find(({ key }) => key === gain.changedKey);
  return baseline === undefined || changed === undefined ? null : { baseline, changed };
}

/** The verdict decides: what is not at least likely is no change. */
function power({ gain: { meanPower, meanPowerRatio, verdict } }: Explained): Observation {
  const isSeen = verdict !== null && (verdict.word === 'clear' || verdict.word === 'likely');
  const state = isSeen ? stateOf(meanPowerRatio, 0) : 'same';
  const text =
    state === 'same'
      ? said`Power the same${verdict === null ? '' : said` within ${percentFigure(verdict.noDifferenceLargerThan, 1)}`}.`
      : said`Power ${figureOf(Math.abs(meanPower), 'power', { decimals: 0 })} ${state === 'up' ? 'higher' : 'lower'} on average.`;
  return { about: 'power', state, change: meanPowerRatio, text };
}

const UP_DOWN = ['higher', 'lower'] as const;

/** Boost at one tap only: by its step at the top where there is one, else by its mean. */
function boost({ comparison, gain }: Explained, { baseline, changed }: Sides): Observation[] {
  if (gain.meanBoost === null || gain.topBoost === null) return [];
  const change = channelChange(comparison, baseline, changed, 'boost');
  if (change === null) return [];
  const tap = comparison.conditions.find(({ id }) => id === 'boost-tap');
  const place = tap?.state === 'alike' ? 'same tap' : 'tap not noted';
  const limit = Math.max(THRESHOLDS.boost.least, change.noise);
  const atTop = Math.abs(gain.topBoost) > limit;
  const step = atTop ? gain.topBoost : gain.meanBoost;
  const state = stateOf(step, limit);
  const figure = THRESHOLDS.boost.figure(Math.abs(step));
  const [low, high] = comparison.averagesWindowRpm!;
  const middle = (low + high) / 2;
  const below = channelChange(comparison, baseline, changed, 'boost', (rpm) => rpm < middle);
  const belowState = below === null ? null : stateOf(below.after - below.before, limit);
  return [
    {
      about: 'boost',
      state,
      change: step,
      text:
        state === 'same'
          ? said`Boost the same within ${THRESHOLDS.boost.figure(limit)}, ${place}.`
          : said`Boost ${figure} ${state === 'up' ? 'higher' : 'lower'} ${atTop ? 'at the top' : 'on average'}, ${place}.`,
    },
    ...(atTop && belowState === 'same'
      ? [
          {
            about: 'boostAtTop' as const,
            state,
            change: step,
            text: said`Boost ${state === 'up' ? 'higher' : 'lower'} at the top only: the same below ${figureOf(middle, 'engineSpeed')}.`,
          },
        ]
      : []),
  ];
}

function channels(comparison: Comparison, { baseline, changed }: Sides): Observation[] {
  const rows = [
    ['fuelFlow', 'Fuel flow', UP_DOWN],
    ['airFlow', 'Air flow', UP_DOWN],
    ['lambda', 'Mixture, lambda', ['higher (leaner)', 'lower (richer)']],
    ['chargeTemperature', 'Charge', ['warmer', 'cooler']],
    ['impellerSpeed', 'Impeller speed', UP_DOWN],
  ] as const;
  return rows.flatMap(([meaning, label, words]) => {
    const change = channelChange(comparison, baseline, changed, meaning);
    return change === null ? [] : [observed(meaning, label, change, THRESHOLDS[meaning], words)];
  });
}

/** Spark as logged on both sides, else as noted in the tune of every pull. */
function spark({ comparison, pulls }: Explained, { baseline, changed }: Sides): Observation[] {
  const words = ['earlier', 'later'] as const;
  const logged = channelChange(comparison, baseline, changed, 'sparkAdvance');
  if (logged !== null) return [observed('sparkAdvance', 'Spark', logged, THRESHOLDS.sparkAdvance, words)];
  const [before, after] = [baseline, changed].map(({ pullIds }) =>
    pullIds.map((id) => {
      const read = parseQuantity(pulls.get(id)?.tune.sparkAdvance ?? '', 'angle');
      return read.ok ? read.value : Number.NaN;
    }),
  );
  const average = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length;
  const change: ChannelChange = { before: average(before!), after: average(after!), noise: 0 };
  if (!Number.isFinite(change.before) || !Number.isFinite(change.after)) return [];
  return [observed('sparkAdvance', 'Spark', change, THRESHOLDS.sparkAdvance, words, 'as noted')];
}

/** Pulleys by the sheets, and what the belt lost of them where shaft speed was measured. */
function drive(explained: Explained, { baseline, changed }: Sides): Observation[] {
  const { comparison, changes, sheets } = explained;
  const [left, right] = [sheets.get(baseline.key), sheets.get(changed.key)];
  const before = left === undefined ? null : driveRatio(left);
  const after = right === undefined ? null : driveRatio(right);
  const isUntouched =
    changes !== null && !changes.some(({ section }) => section === 'drive' || section === 'supercharger');
  const hasDrive = [left, right].every((sheet) => sheet?.sections.drive !== undefined);
  const found: Observation[] = [];
  if (isUntouched && hasDrive)
    found.push({ about: 'pulleyRatio', state: 'same', change: 0, text: said`Same drive by the sheets.` });
  else if (before !== null && after !== null)
    found.push(
      observed(
        'pulleyRatio',
        'Impeller turns for one of the crank',
        { before, after, noise: 0 },
        THRESHOLDS.pulleyRatio,
        UP_DOWN,
        'by the sheets',
      ),
    );
  const [ratio] = found;
  const shaft = channelChange(comparison, baseline, changed, 'impellerSpeed');
  if (ratio === undefined || shaft === null) return found;
  const kept = shaft.after / shaft.before / (1 + ratio.change!);
  const change = 1 - kept;
  const limit = Math.max(THRESHOLDS.slip.least, shaft.noise / shaft.before);
  const state = stateOf(change, limit);
  found.push({
    about: 'slip',
    state,
    change,
    text:
      state === 'same'
        ? said`The belt kept the same speed within ${percentFigure(limit, 1)}, by the shaft speed.`
        : said`The belt loses ${percentFigure(Math.abs(change), 1)} ${state === 'up' ? 'more' : 'less'} speed, by the shaft speed.`,
  });
  return found;
}

/** Standard and weather factor of the two sides. `up`: they differ. */
function correction({ conditions }: Comparison): Observation {
  const row = (wanted: string) => conditions.find(({ id }) => id === wanted);
  const differs = row('standard')?.state === 'differs' || row('weather-factor')?.state === 'differs';
  return {
    about: 'correction',
    state: differs ? 'up' : 'same',
    change: null,
    text: differs
      ? said`Standards or weather factors of the two sides differ.`
      : said`Same standard, and weather factors within ${figureOf(FACTORS_APART, 'ratio', { decimals: 2 })}.`,
  };
}
