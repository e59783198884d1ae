import {
  FOOT,
  HOUR,
  INCH,
  KILOGRAM_FORCE,
  MECHANICAL_HORSEPOWER,
  METRIC_HORSEPOWER,
  POUND,
  POUND_FORCE,
} from './defining-constants.ts';
import { unit } from './unit.ts';

/** Torque in N·m, power in W, specific consumption in kg/J. */
export const UNITS_OF_TORQUE_AND_POWER = [
  unit('torque', 'N·m', 1, 'newton metre | newton meter | newton metres | newton meters'),
  unit(
    'torque',
    'lb-ft',
    POUND_FORCE * FOOT,
    'lbf·ft | lbs-ft | ft-lb | ft-lbf | ft-lbs | pound-feet | foot-pounds',
  ),
  unit('torque', 'lb-in', POUND_FORCE * INCH, 'lbf·in | in-lb | in-lbf | in-lbs'),
  unit('torque', 'daN·m', 10),
  unit('torque', 'kN·m', 1000),
  unit('torque', 'kgf·m', KILOGRAM_FORCE, 'kg·m | kp·m | m·kgf | m·kg'),

  unit('power', 'kW', 1000, 'kilowatt | kilowatts'),
  unit('power', 'hp', MECHANICAL_HORSEPOWER, 'bhp | whp | horsepower | hp (mechanical) | hp (imperial)'),
  unit('power', 'PS', METRIC_HORSEPOWER, 'cv | ch | pk | hp metric | metric hp | hp(M)'),
  unit('power', 'hp (electric)', 746, 'electric hp'),
  unit('power', 'W', 1, 'watt | watts'),

  unit('specificConsumption', 'g/(kW·h)', 1 / (1000 * 1000 * HOUR), 'g/kW/h | g/kW-hr | g/kW/hr'),
  unit('specificConsumption', 'kg/(kW·h)', 1 / (1000 * HOUR), 'kg/kW/h | kg/kW-hr | kg/kW/hr'),
  unit(
    'specificConsumption',
    'lb/(hp·h)',
    POUND / (MECHANICAL_HORSEPOWER * HOUR),
    'lb/hp/h | lb/hp-hr | lb/hp/hr | lbs/hp-hr | lbs/hp/hr | lbs/(hp·h) | lbm/(hp·h) | lb/(bhp·h) | lb/bhp-hr',
  ),
  unit(
    'specificConsumption',
    'g/(PS·h)',
    1 / (1000 * METRIC_HORSEPOWER * HOUR),
    'g/PS/h | g/cv/h | g/(cv·h)',
  ),
  unit('specificConsumption', 'kg/J', 1),
];
