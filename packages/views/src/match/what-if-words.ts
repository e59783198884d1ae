import { unitFor } from '@pullbook/core/quantity';
import type { WhatIf } from '../match-model.ts';
import type { Showing } from '../showing.ts';
import { listed } from '../wording.ts';

const MILLIMETRE = unitFor('mm', 'length')!;

/** What is tried in few words, as the name of its line: `80 mm blower pulley and no cooler`. */
export function whatIfWords(show: Showing, whatIf: WhatIf): string {
  const { crankPulleyDiameter, blowerPulleyDiameter, stepUp, cooler, air, workFactor, breathing } = whatIf;
  const pulley = (metres: number) => {
    const isMetric = show.options.units === 'si';
    return isMetric
      ? show.quantity(metres, 'length', { unit: MILLIMETRE, decimals: 1 })
      : show.quantity(metres, 'length', { decimals: 2 });
  };
  const words = [
    crankPulleyDiameter === undefined ? '' : `${pulley(crankPulleyDiameter)} crank pulley`,
    blowerPulleyDiameter === undefined ? '' : `${pulley(blowerPulleyDiameter)} blower pulley`,
    stepUp === undefined ? '' : `step-up ${show.number(stepUp, 'ratio', { decimals: 2 })}`,
    cooler === 'none'
      ? 'no cooler'
      : typeof cooler === 'object'
        ? `cooler of ${show.perCent(cooler.effectiveness, { decimals: 0 })}`
        : '',
    air === undefined
      ? ''
      : `air of ${show.quantity(air.pressure, 'absolutePressure')} and ${show.quantity(air.temperature, 'temperature')}`,
    breathing === undefined
      ? ''
      : `${show.perCent(breathing.share, { sign: true, decimals: 0 })} air swallowed`,
    workFactor === undefined ? '' : `${show.perCent(workFactor - 1, { sign: true })} work of the air`,
    whatIf.evaporationCooling === undefined
      ? ''
      : `fuel cools by ${show.quantity(whatIf.evaporationCooling, 'temperatureDifference')}`,
    whatIf.fuel === undefined ? '' : whatIf.fuel.name,
  ].filter((part) => part !== '');
  return words.length === 0 ? 'as tried' : listed(words);
}
