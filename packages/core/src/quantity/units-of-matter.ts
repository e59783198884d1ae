import { FOOT, INCH, KILOGRAM_FORCE, POUND, POUND_FORCE, US_GALLON } from './defining-constants.ts';
import { unit } from './unit.ts';

/** Mass in kg, density in kg/m³, moment of inertia in kg·m², spring rate in N/m, force in N. */
export const UNITS_OF_MATTER = [
  unit('mass', 'kg', 1, 'kilogram | kilograms'),
  unit('mass', 'g', 1e-3, 'gram | grams | gr.'),
  unit('mass', 'lb', POUND, 'lbs | lbm | pound | pounds'),
  unit('mass', 'oz', POUND / 16, 'ounce | ounces'),

  unit('density', 'kg/m³', 1),
  unit('density', 'kg/L', 1000, 'kg/dm3'),
  unit('density', 'g/L', 1),
  unit('density', 'g/cm³', 1000, 'g/cc | g/mL'),
  unit('density', 'lb/ft³', POUND / FOOT ** 3, 'lbm/ft3 | lbs/ft3 | lb/cu ft'),
  unit('density', 'lb/gal', POUND / US_GALLON, 'lbs/gal | lb/US gal'),

  unit('momentOfInertia', 'kg·m²', 1),
  unit('momentOfInertia', 'kg·cm²', 1e-4),
  unit('momentOfInertia', 'lb·ft²', POUND * FOOT ** 2, 'lbm·ft2'),
  unit('momentOfInertia', 'lb·in²', POUND * INCH ** 2, 'lbm·in2'),
  unit('momentOfInertia', 'slug·ft²', POUND_FORCE * FOOT, 'lbf·ft·s2 | lb-ft-s2 | ft-lb-s2 | ft·lbf·s2'),
  unit('momentOfInertia', 'lbf·in·s²', POUND_FORCE * INCH, 'lb-in-s2 | in-lb-s2'),

  unit('springRate', 'N/mm', 1000),
  unit('springRate', 'N/m', 1),
  unit('springRate', 'lb/in', POUND_FORCE / INCH, 'lbf/in | lbs/in'),
  unit('springRate', 'kgf/mm', KILOGRAM_FORCE / 1e-3, 'kg/mm'),

  unit('force', 'N', 1, 'newton | newtons'),
  unit('force', 'kN', 1000),
  // A spring's load is told in pounds and kilograms, and weight is what is meant.
  unit('force', 'lbf', POUND_FORCE, 'lb | lbs | pound | pounds'),
  unit('force', 'kgf', KILOGRAM_FORCE, 'kg | kp'),
];
