import type { Provenance } from '../../quantity/index.ts';
import type { Fuel } from '../model.ts';

const DEGREE = Math.PI / 180;
const COMMON: Provenance = { kind: 'common practice', source: 'common practice, no source' };

/** Total advance that engines are run at, rad before top dead centre at full load, as the trade has it. */
export interface SparkHabit {
  what: string;
  low: number;
  high: number;
  from: Provenance;
}

const habit = (what: string, low: number, high: number): SparkHabit => ({
  what,
  low: low * DEGREE,
  high: high * DEGREE,
  from: COMMON,
});

/** By chamber without boost, by fuel under it. */
const SPARK_HABITS = {
  oldChamber: habit('two valves in an old chamber, without boost', 32, 38),
  fastBurn: habit('a fast-burning chamber, without boost', 26, 32),
  pumpUnderBoost: habit('pump gasoline under boost', 16, 22),
  raceUnderBoost: habit('racing gasoline or E85 under boost', 20, 26),
  methanolUnderBoost: habit('methanol under boost', 26, 32),
} as const;

/** Mean of the two octane numbers from which a gasoline counts as a racing one. */
const RACING_FROM = 96;
const MOSTLY = 0.4;

/** What is usual: without boost by chamber, since no sheet tells which it is; under it by fuel. */
export const habitsFor = (fuel: Fuel, isBoosted: boolean): readonly SparkHabit[] =>
  isBoosted ? [habitUnderBoost(fuel)] : [SPARK_HABITS.fastBurn, SPARK_HABITS.oldChamber];

function habitUnderBoost({ parts, researchOctane, motorOctane }: Fuel): SparkHabit {
  const share = (substance: string) =>
    parts.reduce((sum, one) => sum + (one.substance === substance ? one.volumeShare : 0), 0);
  if (share('methanol') > MOSTLY) return SPARK_HABITS.methanolUnderBoost;
  const isRacing = ((researchOctane ?? 95) + (motorOctane ?? 85)) / 2 >= RACING_FROM;
  return isRacing || share('ethanol') > MOSTLY ? SPARK_HABITS.raceUnderBoost : SPARK_HABITS.pumpUnderBoost;
}
