import type { CombinationSheet } from '../../combination/index.ts';
import { beforeManifold, type Fuel } from '../../fuel/index.ts';
import type { Places } from '../../pull/index.ts';
import { figureOf, percentFigure } from '../../quantity/index.ts';
import { remark, said } from '../../remark/index.ts';
import type { Baseline, MatchInput, StatedModel } from '../model.ts';
import { wordsOf } from './sheet-words.ts';
import type { Taken } from './taken.ts';

/** K of what warms the charge in the manifold: the coolant's (common practice, no source). */
const USUAL_WALLS = 363.15;
/** K of warming of which nothing is said. */
const LEAST_WARMING = 0.5;
/** Share of the manifold's pressure that is fuel vapour, half of a rich mixture's petrol evaporated (common practice, no source). */
const CARBURETTED_VAPOUR = 0.01;

/** Fuel in the manifold: whether it cools the charge and takes room. Port and direct injection do neither before the probe. */
export function chargeOfSheet(
  fuel: Fuel,
  { sheet, baseline, stated = {} }: { sheet: CombinationSheet; baseline: Baseline; stated?: StatedModel },
  taken: Taken,
): MatchInput['charge'] {
  const isWet = /carb|throttle-?\s?body/.test(wordsOf(sheet, 'fuelSystem', 'type'));
  const { cooling } = beforeManifold(fuel);
  const evaporationCooling = isWet
    ? taken.first([stated.evaporationCooling], () => ({
        value: cooling,
        because: remark(
          'note',
          'evaporation-assumed',
          said`Fuel goes in before the manifold: its evaporation is taken to cool the charge by ${figureOf(cooling, 'temperatureDifference')} (common practice, no source).`,
        ),
      }))
    : (stated.evaporationCooling ?? 0);
  return {
    heatFactor: stated.heatFactor ?? 1,
    evaporationCooling,
    wallTemperature: wallsOf(baseline, evaporationCooling, stated, taken),
    fuelVapour: isWet
      ? taken.first([stated.fuelVapour], () => ({
          value: CARBURETTED_VAPOUR,
          because: remark(
            'note',
            'fuel-vapour-assumed',
            said`Fuel goes in before the manifold: ${percentFigure(CARBURETTED_VAPOUR)} of its pressure is taken for vapour (common practice, no source).`,
          ),
        }))
      : (stated.fuelVapour ?? 0),
  };
}

/** What warms the charge in the manifold; said where the baseline shows that something does. */
function wallsOf(
  { manifoldTemperature, air }: Baseline,
  evaporationCooling: number,
  stated: StatedModel,
  taken: Taken,
): number | null {
  if (stated.wallTemperature !== undefined) return stated.wallTemperature;
  const warmed = manifoldTemperature.map((manifold) => manifold + evaporationCooling - air.temperature);
  if (warmed.every((kelvin) => Math.abs(kelvin) < LEAST_WARMING)) return USUAL_WALLS;
  return taken.first<number>([], () => ({
    value: USUAL_WALLS,
    because: remark(
      'note',
      'wall-temperature-assumed',
      said`The manifold warms its charge as it does without the supercharger, by the same share of how much hotter it is; it is taken to be at ${figureOf(USUAL_WALLS, 'temperature')}, as the coolant (common practice, no source).`,
    ),
  }));
}

/** Where boost was read, by what was noted of the tap; the manifold where nothing was. */
export function tapOf(places: Places, stated: StatedModel): MatchInput['tap'] {
  if (stated.tap !== undefined) return stated.tap;
  const place = places.boostTap?.toLowerCase() ?? '';
  if (/manifold|plenum|runner|port|behind the throttle|after the throttle|behind the carb|below/.test(place))
    return 'manifold';
  if (/compressor|discharge|blower|supercharger|scroll/.test(place)) return 'compressor outlet';
  return /hat|throttle|carb|pipe|before|cooler/.test(place) ? 'before throttle' : 'manifold';
}
