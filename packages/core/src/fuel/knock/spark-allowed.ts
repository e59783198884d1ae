import { figureOf, numberFigure, percentFigure, rangeOf, speedFigure } from '../../quantity/index.ts';
import { joined, type Remark, remark, said } from '../../remark/index.ts';
import type { ChargeAtLoad, Fuel, FuelSupply, SparkAllowed } from '../model.ts';
import { octaneForKnock } from './octane-for-knock.ts';
import { LATEST, LEFT_OPEN, type SparkFigures, sparkFigures } from './spark-figures.ts';
import { habitsFor } from './spark-habits.ts';

const DEGREE = Math.PI / 180;
/** Manifold over exhaust pressure from which an engine counts as boosted. */
const BOOSTED_FROM = 1.1;
/** Share of the work of which nothing is said. */
const LEAST_SAID = 5e-4;

/**
 * How much advance a fuel allows an engine at full load at one speed, planning grade: the spark at which the end gas would light by itself before the flame has
 * gone through (Livengood and Wu's integral of Douaud and Eyzat's delay reaches 1, on a one-zone trace), at most the one for best torque. Its ends are one
 * standard deviation of what the assumptions leave open. No engine was measured for it: it ranks fuels, charges and compression ratios, and never sets a spark.
 *
 * @param mixes  where the fuel goes in; a direct injection cools the charge most
 * @example sparkAllowed({ engineSpeedRpm: 6000, manifoldPressure: 168e3, manifoldTemperature: 375, compressionRatio: 9.6, exhaustPressure: 103e3, lambda: 0.79 }, pump98).allowed // 0.46 rad, 27°
 */
export function sparkAllowed(
  charge: ChargeAtLoad,
  fuel: Fuel,
  mixes: FuelSupply['mixes'] = 'port',
): SparkAllowed {
  const figures = sparkFigures(charge, fuel, { mixes });
  const { forBestTorque, allowed, low, high, work, workLow, workHigh } = figures;
  return {
    forBestTorque,
    allowed,
    low,
    high,
    work,
    workLow,
    workHigh,
    assumptions: assumptionsOf(charge, fuel, figures),
  };
}

/** An angle in a sentence, in whole degrees. */
const degrees = (angle: number) => figureOf(angle, 'angle', { decimals: 0 });

function assumptionsOf(charge: ChargeAtLoad, fuel: Fuel, figures: SparkFigures): Remark[] {
  const { octane, sensitivity, told } = octaneForKnock(fuel);
  const { allowed, forBestTorque, cooling, coolingSpread } = figures;
  const isBoosted = charge.manifoldPressure > BOOSTED_FROM * charge.exhaustPressure;
  const usual = joined(
    habitsFor(fuel, isBoosted).map(
      ({ low, high, what }) => said`${rangeOf(low, high, 'angle', ' to ', { decimals: 0 })} for ${what}`,
    ),
    ', ',
  );
  return [
    remark(
      'note',
      'spark-from-integral',
      said`The spark that ${fuel.name} allows is reckoned from an ignition delay of gasolines and a simple trace of pressure, with ${percentFigure(LEFT_OPEN.delay)} of the delay, ${figureOf(LEFT_OPEN.charge, 'temperatureDifference', { decimals: 0 })} of the charge and ${numberFigure(LEFT_OPEN.octane, 0)} octane numbers left open. It is for planning: find the spark on the brake, from the safe side.`,
    ),
    told === 'both'
      ? remark(
          'note',
          'octane-mean',
          said`Knock is reckoned with ${numberFigure(octane, 1)}, the mean of research and motor octane of ${fuel.name}, which lie ${numberFigure(sensitivity, 1)} apart; under boost and cold it may stand more.`,
        )
      : remark(
          told === 'one' ? 'note' : 'caution',
          'octane-assumed',
          said`${told === 'one' ? 'One octane number' : 'No octane number'} of ${fuel.name} is known; ${numberFigure(octane, 1)} as the mean of research and motor octane is taken (common practice, no source). Enter both under fuel.`,
        ),
    remark(
      'note',
      'evaporation-in-charge',
      said`The fuel's evaporation is taken to cool the charge behind the manifold by ${figureOf(cooling, 'temperatureDifference', { decimals: 0 })}, give or take ${figureOf(coolingSpread, 'temperatureDifference', { decimals: 0 })}: the rest of its heat comes from walls and valves (common practice, no source).`,
    ),
    remark(
      'note',
      'spark-for-best-torque',
      said`Best torque is taken at ${degrees(forBestTorque)} before top dead centre at ${speedFigure(charge.engineSpeedRpm)}, where half is burnt 9° after it. Usual are ${usual} (common practice, no source).`,
    ),
    ...(allowed <= LATEST + 0.5 * DEGREE
      ? [
          remark(
            'caution',
            'no-spark-allowed',
            said`No spark keeps ${fuel.name} from lighting by itself at ${speedFigure(charge.engineSpeedRpm)} and ${figureOf(charge.manifoldPressure, 'absolutePressure')}, ${figureOf(charge.manifoldTemperature, 'temperature')} in the manifold: the latest looked at is ${degrees(-LATEST)} after top dead centre. Take less boost, a cooler, or another fuel.`,
          ),
        ]
      : []),
    ...(figures.work < 1 - LEAST_SAID
      ? [
          remark(
            'note',
            'spark-costs-work',
            said`${degrees(forBestTorque - allowed)} later than best torque leaves ${percentFigure(figures.work, 1)} of the work (common practice, no source).`,
          ),
        ]
      : []),
  ];
}
