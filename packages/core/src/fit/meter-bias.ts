import type { MatchCase } from '../airpath/index.ts';
import { FITTED_CHANNELS, type FittedChannel } from './fitted-channels.ts';
import { varianceOf } from './prior-of-fit.ts';

/**
 * The channels with the air's as it has to be read here. Where the baseline's air was measured too, one bias of the same meter (or fuel flow and
 * lambda) is in both: a swallowing scale of 0.97 says in part that the meter reads 3 % high, and then it does so on the boosted pull as well. How much of the
 * scale is that bias follows from the spreads of both; what is left open of it is common to all readings.
 */
export function channelsFor({ input, spread }: MatchCase): FittedChannel[] {
  const { airBasis } = input.baseline;
  if (airBasis !== 'air flow' && airBasis !== 'fuel and mixture') return [...FITTED_CHANNELS];
  const bias = varianceOf(spread, 'baselineAir');
  const ofEngine = varianceOf(spread, 'swallowing');
  if (!(bias > 0)) return [...FITTED_CHANNELS];
  const share = bias / (bias + ofEngine);
  return FITTED_CHANNELS.map((channel) =>
    channel.channel === 'airFlow'
      ? {
          ...channel,
          followsSwallowing: -share,
          common: { share: Math.hypot(Math.sqrt(bias * (1 - share)), BETWEEN_PULLS), floor: 0 },
        }
      : channel,
  );
}

/** Share by which one and the same meter reads differently without and with boost (common practice, no source). */
const BETWEEN_PULLS = 0.01;
