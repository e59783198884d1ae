import { figureOf, percentFigure } from '../quantity/index.ts';
import type { Figure } from '../remark/index.ts';

/** Within this a change counts as none, however small the scatter of its repeats. */
export interface Threshold {
  /** Inside unit, or a share where `isShare`. */
  least: number;
  isShare: boolean;
  /** The size of a change as people read it. */
  figure: (change: number) => Figure;
  source: string;
}

const share = (least: number, source: string): Threshold => ({
  least,
  isShare: true,
  figure: (change) => percentFigure(change, 1),
  source,
});
const COMMON = 'common practice, no source';

/** What instruments, taps and belts let pass. Repeats that scatter more than this widen it (see `observe-channel`). */
export const THRESHOLDS = {
  boost: {
    least: 1700,
    isShare: false,
    figure: (change) => figureOf(change, 'gaugePressure'),
    source: `0.25 psi, what a gauge and its tap let pass: ${COMMON}`,
  },
  fuelFlow: share(0.02, `2 %, what fuel meters agree within: ${COMMON}`),
  airFlow: share(0.02, `2 %, as for fuel: ${COMMON}`),
  lambda: {
    least: 0.03,
    isShare: false,
    figure: (change) => figureOf(change, 'ratio', { decimals: 3 }),
    source: `0.03, from which on two tunes are not the same: ${COMMON}`,
  },
  sparkAdvance: {
    least: Math.PI / 180,
    isShare: false,
    figure: (change) => figureOf(change, 'angle'),
    source: `1°, from which on two tunes are not the same: ${COMMON}`,
  },
  chargeTemperature: {
    least: 10 / 1.8,
    isShare: false,
    figure: (change) => figureOf(change, 'temperatureDifference', { decimals: 0 }),
    source: `10 °F, what is let pass between compared pulls: ${COMMON}`,
  },
  impellerSpeed: share(0.01, `1 %, within the usual creep of a belt of 0.5 to 2 %: from memory of the trade`),
  slip: share(0.01, '1 % more slip; from 3 % on a belt is called slipping: from memory of the trade'),
  pulleyRatio: share(0.001, 'a tenth of a per cent, as sheets give diameters: by the arithmetic'),
} as const satisfies Record<string, Threshold>;

/** Gain in per cent at the bottom and at the top of the window that differs by less than this is constant. Our choice. */
export const CONSTANT_WITHIN = 0.01;
/** Least loss and gain, as shares, on the two sides of a crossover. Our choice: the smallest gain that matters by default. */
export const CROSSOVER_LEAST = 0.01;
/** Weather factors further apart than this put a comparison in doubt. Common practice, no source. */
export const FACTORS_APART = 0.03;
/** How far a boosted gain may miss the unsupercharged gain times the pressure ratio. From memory of the trade: index 0.72 to 1.08. */
export const SCALING_WITHIN = 0.25;
