import { figureOf, numberFigure, percentFigure, speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { beforeManifold, vapourShare } from './before-manifold.ts';
import { type SparkFigures, sparkFigures } from './knock/spark-figures.ts';
import { EVAPORATES_IN_CHARGE } from './knock/trapped-charge.ts';
import type { ChargeAtLoad, Fuel, FuelEffect, FuelSupply } from './model.ts';

/** One standard deviation, share of the work, of a rule of thumb: nothing that is said of another fuel is known better. */
const LEAST_SPREAD = 0.02;
/** Share of what evaporates in the charge that does so before the intake valve shuts, and so draws in air (common practice, no source). */
const IN_TIME = 0.5;

/** What parts of an effect are, as factors on the work. */
export interface EffectFigures {
  energy: number;
  /** Colder charge less the room its vapour takes, on the air that is trapped. */
  air: number;
  spark: number;
  work: number;
  workSpread: number;
  before: SparkFigures;
  after: SparkFigures;
}

/** Of the same fuel. */
export const NO_EFFECT: FuelEffect = {
  work: 1,
  workSpread: 0,
  evaporationCooling: 0,
  fuelVapour: 0,
  because: [],
};

/** Whether two fuels are one as far as an engine's power goes; names do not count. */
export const isSameFuel = (one: Fuel, other: Fuel): boolean =>
  one === other ||
  (
    ['stoichiometricAirFuelRatio', 'heatingValue', 'latentHeat', 'researchOctane', 'motorOctane'] as const
  ).every((figure) => one[figure] === other[figure]);

/**
 * What an engine does on another fuel at a charge, planning grade: the energy that a kilogram of air sets free, the air that evaporation draws in, the spark
 * that the fuel allows. Both fuels at the lambda of the charge, richer than stoichiometric, where the oxygen is what burns. A rule of thumb: 2 % at least.
 *
 * @param charge  as it is with the fuel before
 * @example fuelEffect(pump98, e85, chargeUnderBoost, 'port').work // 1.02
 */
export function fuelEffect(
  before: Fuel,
  after: Fuel,
  charge: ChargeAtLoad,
  mixes: FuelSupply['mixes'],
): FuelEffect {
  if (isSameFuel(before, after)) return NO_EFFECT;
  const figures = effectFigures({ before, after, charge, mixes });
  const more = moreBeforeManifold(before, after, mixes);
  return {
    work: figures.work,
    workSpread: figures.workSpread,
    ...more,
    because: becauseOf({ before, after, charge }, figures, more.evaporationCooling),
  };
}

/** What the fuel after does more than the one before to the charge ahead of the manifold's probe; nothing but in a carburettor. */
export function moreBeforeManifold(
  before: Fuel,
  after: Fuel,
  mixes: FuelSupply['mixes'],
): Pick<FuelEffect, 'evaporationCooling' | 'fuelVapour'> {
  if (mixes !== 'carburettor') return { evaporationCooling: 0, fuelVapour: 0 };
  const [was, is] = [beforeManifold(before), beforeManifold(after)];
  return { evaporationCooling: is.cooling - was.cooling, fuelVapour: is.vapour - was.vapour };
}

/** The figures of `fuelEffect` without its words. @param ends `false`: no spread of the spark, in a third of the time */
export function effectFigures({
  before,
  after,
  charge,
  mixes,
  ends = true,
}: {
  before: Fuel;
  after: Fuel;
  charge: ChargeAtLoad;
  mixes: FuelSupply['mixes'];
  ends?: boolean;
}): EffectFigures {
  const { evaporationCooling: more } = moreBeforeManifold(before, after, mixes);
  const colder = { ...charge, manifoldTemperature: charge.manifoldTemperature - more };
  const was = sparkFigures(charge, before, { mixes, ends });
  const is = sparkFigures(colder, after, { mixes, ends });
  const energy = energyOfAir(after) / energyOfAir(before);
  const [airBefore, airAfter] = [
    airDrawnIn(charge, before, was, mixes),
    airDrawnIn(colder, after, is, mixes),
  ];
  const air = airAfter.factor / airBefore.factor;
  const spark = is.work / was.work;
  // What is open of charge and delay is open of both fuels alike: the ends of the ratio, not the ratio of the ends.
  const [late, early] = [is.workLow / was.workLow, is.workHigh / was.workHigh];
  const workSpread = Math.hypot(LEAST_SPREAD, Math.log(late / early) / 2, airAfter.spread - airBefore.spread);
  return { energy, air, spark, work: energy * air * spark, workSpread, before: was, after: is };
}

/** J that a kilogram of air sets free, burning as much fuel as its oxygen can. */
const energyOfAir = ({ heatingValue, stoichiometricAirFuelRatio }: Fuel): number =>
  heatingValue / stoichiometricAirFuelRatio;

/** Air trapped against a fuel that stays liquid: the root of the temperatures, less the room of the vapour; and its standard deviation. */
function airDrawnIn(
  { manifoldTemperature, lambda }: ChargeAtLoad,
  fuel: Fuel,
  { cooling }: SparkFigures,
  mixes: FuelSupply['mixes'],
): { factor: number; spread: number } {
  const { share, spread } = EVAPORATES_IN_CHARGE[mixes];
  const factor =
    Math.sqrt(manifoldTemperature / (manifoldTemperature - IN_TIME * cooling)) *
    (1 - vapourShare(fuel, lambda, IN_TIME * share));
  // How much evaporates in time is not known better than the share itself.
  return { factor, spread: Math.abs(factor - 1) * (spread / share + IN_TIME) };
}

function becauseOf(
  { before, after, charge }: { before: Fuel; after: Fuel; charge: ChargeAtLoad },
  { energy, air, spark, workSpread, before: was, after: is }: EffectFigures,
  moreCooling: number,
): Remark[] {
  const signed = (factor: number) => percentFigure(factor - 1, 1);
  const degrees = (angle: number) => figureOf(angle, 'angle', { decimals: 0 });
  return [
    remark(
      'note',
      'fuel-energy',
      said`${after.name} sets ${numberFigure(energyOfAir(after) / 1e6, 3)} MJ free with a kilogram of air, ${before.name} ${numberFigure(energyOfAir(before) / 1e6, 3)} MJ: ${signed(energy)} of work.`,
    ),
    remark(
      'note',
      'fuel-draws-air',
      said`Behind the manifold it cools the charge by ${figureOf(is.cooling, 'temperatureDifference', { decimals: 0 })} in place of ${figureOf(was.cooling, 'temperatureDifference', { decimals: 0 })}, which draws in air, less the room of its vapour: ${signed(air)} (rule of thumb).`,
    ),
    remark(
      'note',
      'fuel-allows-spark',
      said`At ${speedFigure(charge.engineSpeedRpm)} it allows ${degrees(is.allowed)} of advance in place of ${degrees(was.allowed)}, ${degrees(is.forBestTorque)} being best: ${signed(spark)} of work (rule of thumb; the spark is set on the brake).`,
    ),
    ...(moreCooling === 0
      ? []
      : [
          remark(
            'note',
            'fuel-cools-manifold',
            said`Going in before the manifold, it is taken to cool the charge by ${figureOf(Math.abs(moreCooling), 'temperatureDifference', { decimals: 0 })} ${moreCooling > 0 ? 'more' : 'less'} (common practice, no source).`,
          ),
        ]),
    remark(
      'note',
      'fuel-rule-of-thumb',
      said`What another fuel does is a rule of thumb, ${percentFigure(workSpread, 1)} of the work as one standard deviation; a pull on it tells. Pulls that ran later than their fuel allows have more to win, by spark and not by fuel.`,
    ),
  ];
}
