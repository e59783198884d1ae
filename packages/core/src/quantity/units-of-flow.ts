import { FOOT, HOUR, MINUTE, POUND, UK_GALLON, US_GALLON } from './defining-constants.ts';
import { unit } from './unit.ts';

const LITRE = 1e-3;
const GRAM = 1e-3;

/**
 * Mass flow in kg/s, volume flow in m³/s. `scfm` is left out on purpose: it is a mass flow whose reference air is seldom stated.
 */
export const UNITS_OF_FLOW = [
  unit('massFlow', 'kg/h', 1 / HOUR, 'kg/hr | kg/hour'),
  unit('massFlow', 'kg/min', 1 / MINUTE),
  unit('massFlow', 'kg/s', 1, 'kg/sec'),
  unit('massFlow', 'g/s', GRAM, 'g/sec'),
  unit('massFlow', 'g/min', GRAM / MINUTE),
  unit('massFlow', 'g/h', GRAM / HOUR, 'g/hr'),
  unit('massFlow', 'lb/h', POUND / HOUR, 'lb/hr | lbs/h | lbs/hr | lbm/h | lbm/hr | pph'),
  unit('massFlow', 'lb/min', POUND / MINUTE, 'lbs/min | lbm/min'),
  unit('massFlow', 'lb/s', POUND, 'lb/sec | lbs/s | lbs/sec | lbm/s | lbm/sec'),

  unit('volumeFlow', 'm³/h', 1 / HOUR, 'm3/hr'),
  unit('volumeFlow', 'm³/min', 1 / MINUTE),
  unit('volumeFlow', 'm³/s', 1, 'm3/sec'),
  unit('volumeFlow', 'L/s', LITRE, 'L/sec'),
  unit('volumeFlow', 'L/min', LITRE / MINUTE, 'lpm'),
  unit('volumeFlow', 'L/h', LITRE / HOUR, 'L/hr | lph'),
  unit('volumeFlow', 'cm³/min', 1e-6 / MINUTE, 'cc/min | ccm/min | mL/min'),
  unit('volumeFlow', 'cm³/s', 1e-6, 'cc/s | mL/s'),
  unit('volumeFlow', 'cfm', FOOT ** 3 / MINUTE, 'ft3/min | cu ft/min | cubic feet per minute'),
  unit('volumeFlow', 'ft³/s', FOOT ** 3, 'ft3/sec'),
  unit('volumeFlow', 'gal/h', US_GALLON / HOUR, 'gal/hr | gph | US gal/h'),
  unit('volumeFlow', 'gal/min', US_GALLON / MINUTE, 'gpm | US gal/min'),
  unit('volumeFlow', 'UK gal/h', UK_GALLON / HOUR, 'UK gal/hr | imp gal/h'),
];
