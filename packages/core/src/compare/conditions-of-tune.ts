import { averageOver, type ChannelMeaning } from '../pull/index.ts';
import { figureOf, numberFigure } from '../quantity/index.ts';
import { type CountedPull, isNoted, numberCondition, rangeText, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';

/** Mixture, spark and fuel pressure as measured over the common window, and the tune as noted. */
export function conditionsOfTune(
  pulls: readonly CountedPull[],
  windowRpm: readonly [number, number] | null,
): ConditionDifference[] {
  const average = (meaning: ChannelMeaning) => (counted: CountedPull) =>
    windowRpm === null || counted.view.curve === null
      ? null
      : averageOver(counted.view.curve, meaning, windowRpm);
  const mixture = numberCondition(pulls, {
    id: 'lambda',
    label: 'Mixture, lambda',
    why: 'Power follows mixture; more than 0.03 apart over the common window is not the same tune (common practice, no source).',
    read: average('lambda'),
    text: rangeText((lambda) => numberFigure(lambda, 3)),
    differ: (low, high) => high - low > 0.03,
  });
  const spark = numberCondition(pulls, {
    id: 'spark',
    label: 'Spark advance, logged',
    why: 'More than 1° apart over the common window is not the same tune (common practice, no source).',
    read: average('sparkAdvance'),
    text: rangeText((angle) => figureOf(angle, 'angle')),
    differ: (low, high) => high - low > Math.PI / 180,
  });
  const pressure = numberCondition(pulls, {
    id: 'fuel-pressure',
    label: 'Fuel pressure, logged',
    why: 'Flow follows the root of pressure; more than 10 % apart is not the same fuel system at work (common practice, no source).',
    read: average('fuelPressure'),
    text: rangeText((pascal) => figureOf(pascal, 'gaugePressure')),
    differ: (low, high) => high - low > 0.1 * Math.abs(low),
  });
  const noted = (
    [
      ['tune-spark', 'Spark advance, noted', 'sparkAdvance'],
      ['tune-lambda', 'Mixture aimed at', 'targetLambda'],
      ['tune-jets', 'Jets', 'jets'],
      ['tune-fuel-pressure', 'Fuel pressure, noted', 'fuelPressure'],
      ['tune-cooler-water', 'Into the charge cooler, noted', 'coolerWater'],
      ['tune-notes', 'Tune, notes', 'notes'],
    ] as const
  ).map(([id, label, field]) =>
    textCondition(pulls, {
      id,
      label,
      why: 'A tune made again for one side only is a second change: no other setting is let pass (common practice, no source).',
      read: ({ pull }) => pull.tune[field],
    }),
  );
  const batch = textCondition(pulls, {
    id: 'fuel-batch',
    label: 'Fuel batch',
    why: 'Another drum or delivery of the same name has another density and octane: the same batch is asked for (common practice, no source).',
    read: ({ pull }) => pull.tune.fuelBatch,
  });
  const shown = [spark, pressure, ...noted, batch].filter(isNoted);
  // Mixture and spark are always asked for: that nobody knows them is itself worth saying.
  const sparkKnown = shown.some((one) => one.id === 'spark' || one.id === 'tune-spark');
  return [mixture, ...(sparkKnown ? [] : [spark]), ...shown];
}
