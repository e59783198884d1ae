import { type Said, said } from '../remark/index.ts';
import type { About } from './observation.ts';

/** What it takes to see each thing, in words that follow `would settle it`. Common practice, no source. */
const MEASUREMENTS: Partial<Record<About, { what: string; how: string }>> = {
  slip: {
    what: 'A shaft-speed pick-up on the supercharger',
    how: 'it shows whether the impeller turns as fast as the pulleys say, on both sides',
  },
  impellerSpeed: {
    what: 'A shaft-speed pick-up on the supercharger',
    how: 'it shows whether the impeller turns as fast on both sides',
  },
  pulleyRatio: { what: 'The pulley diameters of both sides', how: 'enter them on the sheets' },
  boost: { what: 'Boost at one and the same tap', how: 'note the tap with the pulls of both sides' },
  chargeTemperature: {
    what: 'Charge temperature on both sides',
    how: 'with the probe at one place, behind the cooler',
  },
  chargeTrend: { what: 'Charge temperature in three pulls in a row', how: 'with the wait noted' },
  fuelFlow: { what: 'Fuel flow on both sides', how: 'more air at the same mixture takes more fuel' },
  airFlow: { what: 'Air flow on both sides', how: 'it shows whether more air goes in' },
  lambda: { what: 'The mixture, logged on both sides', how: 'within 0.03 lambda it is the same tune' },
  sparkAdvance: {
    what: 'The spark advance, logged or noted on both sides',
    how: 'within 1° it is the same tune',
  },
  correction: { what: 'Both sides pulled in the same air', how: 'brought to one standard' },
  trend: { what: 'Four pulls of one side in a row', how: 'with the waits noted' },
  crossover: { what: 'Pulls that start lower', how: 'so that both sides of a crossover are seen' },
  withoutSupercharger: {
    what: 'The same change pulled without the supercharger',
    how: 'its gain times the pressure ratio is what boost alone makes of it',
  },
};

/** Whether it can be seen by something that was not done. */
export const canBeMeasured = (about: About): boolean => MEASUREMENTS[about] !== undefined;

/** `A shaft-speed pick-up on the supercharger would settle it: …` */
export function settledBy(about: About): Said {
  const { what, how } = MEASUREMENTS[about]!;
  return said`${what} would settle it: ${how}.`;
}

/** What is still to be measured, for where too little was. */
export const measuredBy = (about: About): string => {
  const { what } = MEASUREMENTS[about]!;
  return `${what.charAt(0).toLowerCase()}${what.slice(1)}`;
};

/** Where everything that could part two stories was measured: the baseline once more. */
export const AGAIN: Said = said`A pull of the baseline once more would settle it: what went with the day comes back with it, what the part did does not.`;
