import type { ScatterHistory, Spread } from './model.ts';

/** A spread as invented tests need it. */
export const spread = (
  sigma: number,
  degreesOfFreedom: number,
  from: Spread['from'] = 'built-in',
): Spread => ({ sigma, degreesOfFreedom, from });

/** An invented shop's history: pulls scatter by 0.4 %, set-ups by 0.5 %, days by 0.9 %. */
export function inventedHistory(changes: Partial<ScatterHistory> = {}): ScatterHistory {
  return {
    pull: spread(0.004, 20),
    setUp: spread(0.005, 8),
    day: spread(0.009, 6),
    cell: spread(0.02, 4),
    within: { ...spread(0.003, 40), lengthRpm: 300 },
    driftPerHour: spread(0.004, 6),
    ...changes,
  };
}
