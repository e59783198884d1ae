import { FOOT, HOUR, INCH, MINUTE, UK_GALLON, US_GALLON } from './defining-constants.ts';
import { unit } from './unit.ts';

const MILE = 5280 * FOOT;

/** Length in m, area in m², volume in m³, speed in m/s. */
export const UNITS_OF_SIZE = [
  unit('length', 'mm', 1e-3, 'millimetre | millimeter | millimetres | millimeters'),
  unit('length', 'cm', 1e-2, 'centimetre | centimeter'),
  unit('length', 'm', 1, 'metre | meter | metres | meters'),
  unit('length', 'km', 1000),
  unit('length', 'µm', 1e-6, 'um | micron | microns'),
  unit('length', 'in', INCH, 'in. | inch | inches | "'),
  unit('length', 'thou', INCH / 1000, 'mil | mils | 0.001 in'),
  unit('length', 'ft', FOOT, "ft. | foot | feet | '"),

  unit('area', 'mm²', 1e-6),
  unit('area', 'cm²', 1e-4),
  unit('area', 'm²', 1),
  unit('area', 'in²', INCH ** 2, 'sq in | sq. in. | square inches'),
  unit('area', 'ft²', FOOT ** 2, 'sq ft'),

  unit('volume', 'cm³', 1e-6, 'cc | ccm | mL'),
  unit('volume', 'L', 1e-3, 'litre | liter | litres | liters | dm3'),
  unit('volume', 'm³', 1),
  unit('volume', 'mm³', 1e-9),
  unit('volume', 'in³', INCH ** 3, 'cu in | cu. in. | cubic inch | cubic inches | cid | ci'),
  unit('volume', 'ft³', FOOT ** 3, 'cu ft | cubic feet'),
  unit('volume', 'gal', US_GALLON, 'US gal | gal (US) | gallon | gallons'),
  unit('volume', 'UK gal', UK_GALLON, 'gal (UK) | imp gal'),

  unit('speed', 'm/s', 1, 'm/sec'),
  unit('speed', 'km/h', 1000 / HOUR, 'kph | kmh'),
  unit('speed', 'ft/min', FOOT / MINUTE, 'fpm'),
  unit('speed', 'ft/s', FOOT, 'ft/sec | fps'),
  unit('speed', 'mph', MILE / HOUR, 'mi/h'),
];
