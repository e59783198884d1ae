import type { ComparedCombination, Gain } from '../compare/index.ts';
import type { TrialAnswer } from '../trial/index.ts';
import type { PublishedFigure } from './model.ts';

/**
 * The figures that a trial says outside: of each combination its average power over the averages' window and its highest
 * power, torque and boost (of the mean curve), of each changed one its gain. Inside units. One that there is not (no boost,
 * no common window, no gain in a survey) is left out.
 *
 * @example figuresOf(answer).find(({ id, key }) => id === 'meanGain' && key === 'B')?.value // 12_400, W
 */
export function figuresOf({ comparison }: Pick<TrialAnswer, 'comparison'>): PublishedFigure[] {
  if (comparison === null) return [];
  const { combinations, gains, engineSpeedRpm } = comparison;
  const figures = [
    ...combinations.flatMap((one) => ofCombination(one, engineSpeedRpm)),
    ...gains.flatMap(ofGain),
  ];
  return figures.filter(({ value }) => Number.isFinite(value));
}

function ofCombination(
  { key, averages, peakPower, peakPowerBand, peakTorque, channels }: ComparedCombination,
  engineSpeedRpm: Float64Array,
): PublishedFigure[] {
  const unsure = { key, low: null, high: null };
  const average = averages.get('power');
  const boost = highest(channels.get('boost')?.mean, engineSpeedRpm);
  return [
    ...(average === undefined
      ? []
      : [
          {
            ...unsure,
            id: 'averagePower' as const,
            kind: 'power' as const,
            value: average,
            engineSpeedRpm: null,
          },
        ]),
    ...(peakPower === null
      ? []
      : [
          {
            id: 'peakPower' as const,
            key,
            kind: 'power' as const,
            value: peakPower.value,
            ...banded(peakPowerBand),
            engineSpeedRpm: peakPower.atRpm,
          },
        ]),
    ...(peakTorque === null
      ? []
      : [
          {
            ...unsure,
            id: 'peakTorque' as const,
            kind: 'torque' as const,
            value: peakTorque.value,
            engineSpeedRpm: peakTorque.atRpm,
          },
        ]),
    ...(boost === null
      ? []
      : [{ ...unsure, id: 'highestBoost' as const, kind: 'gaugePressure' as const, ...boost }]),
  ];
}

function ofGain({ changedKey: key, meanPower, meanPowerRatio, band }: Gain): PublishedFigure[] {
  const nowhere = { key, engineSpeedRpm: null };
  return [
    { ...nowhere, id: 'meanGain', kind: 'power', value: meanPower, ...banded(band?.meanPower) },
    {
      ...nowhere,
      id: 'meanGainRatio',
      kind: 'ratio',
      value: meanPowerRatio,
      ...banded(band?.meanPowerRatio),
    },
  ];
}

/** The highest of a curve and where it stands; `null`: it has no figure. */
function highest(
  curve: Float64Array | undefined,
  engineSpeedRpm: Float64Array,
): { value: number; engineSpeedRpm: number } | null {
  let at = -1;
  for (const [node, value] of (curve ?? []).entries())
    if (Number.isFinite(value) && (at < 0 || value > curve![at]!)) at = node;
  return at < 0 ? null : { value: curve![at]!, engineSpeedRpm: engineSpeedRpm[at]! };
}

const banded = (
  band: readonly [number, number] | null | undefined,
): { low: number | null; high: number | null } =>
  band?.every(Number.isFinite) ? { low: band[0], high: band[1] } : { low: null, high: null };
