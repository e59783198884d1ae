import {
  INCH,
  KILOGRAM_FORCE,
  METRE_OF_MERCURY,
  METRE_OF_WATER,
  POUND_PER_SQUARE_INCH,
  STANDARD_ATMOSPHERE,
} from './defining-constants.ts';
import type { QuantityKind } from './model.ts';
import { type Unit, unit } from './unit.ts';

/**
 * Pressure in Pa. Absolute, gauge and difference are kinds of their own: a spelling that says which (`psia`, `bar(g)`) is
 * accepted by that kind alone, a bare one (`psi`) by all three.
 *
 * `inHg` is the conventional inch of mercury, 3386.388 640 Pa. A barometer scaled for mercury at 32 °F or 60 °F is entered as
 * `inHg (32 °F)` or `inHg (60 °F)`; the two differ by 0.28 %.
 */
interface PressureRow {
  name: string;
  pascal: number;
  /** Other spellings, ` | ` between. */
  others?: string;
  exactCase?: true;
}

const ROWS: PressureRow[] = [
  { name: 'kPa', pascal: 1000, others: 'kilopascal' },
  {
    name: 'psi',
    pascal: POUND_PER_SQUARE_INCH,
    others: 'lbf/in2 | lb/in2 | lbs/in2 | pounds per square inch',
  },
  { name: 'bar', pascal: 100_000 },
  { name: 'mbar', pascal: 100, others: 'mb | millibar' },
  { name: 'hPa', pascal: 100, others: 'hectopascal' },
  {
    name: 'inHg',
    pascal: INCH * METRE_OF_MERCURY,
    others: 'in. Hg | inch Hg | inches Hg | "Hg | inHg (conventional)',
  },
  { name: 'inHg (32 °F)', pascal: 3386.38, others: 'inHg (32F) | inHg (0 °C) | inHg (0C)' },
  { name: 'inHg (60 °F)', pascal: 3376.85, others: 'inHg (60F)' },
  { name: 'mmHg', pascal: 1e-3 * METRE_OF_MERCURY, others: 'mm Hg (conventional)' },
  { name: 'torr', pascal: STANDARD_ATMOSPHERE / 760 },
  {
    name: 'inH2O',
    pascal: INCH * METRE_OF_WATER,
    others: 'in. H2O | inch H2O | "H2O | inH2O (conventional) | inWC | in w.c.',
  },
  { name: 'inH2O (39.2 °F)', pascal: 249.082, others: 'inH2O (39.2F) | inH2O (4 °C)' },
  { name: 'inH2O (60 °F)', pascal: 248.84, others: 'inH2O (60F)' },
  { name: 'mmH2O', pascal: 1e-3 * METRE_OF_WATER, others: 'mmWC' },
  { name: 'atm', pascal: STANDARD_ATMOSPHERE },
  { name: 'kgf/cm²', pascal: KILOGRAM_FORCE / 1e-4, others: 'kg/cm2 | kp/cm2' },
  { name: 'MPa', pascal: 1e6, exactCase: true },
  { name: 'Pa', pascal: 1, others: 'pascal' },
];

export const UNITS_OF_PRESSURE: Unit[] = [
  ...pressureUnits('absolutePressure', ['abs', 'absolute', '(a)']),
  ...pressureUnits('gaugePressure', ['gauge', 'gage', '(g)']),
  ...pressureUnits('pressureDifference', ['difference', 'diff', '(d)']),
];

function pressureUnits(kind: QuantityKind, sayings: string[]): Unit[] {
  return ROWS.map(({ name, pascal, others, exactCase }) => {
    const plain = others === undefined ? [name] : [name, ...others.split(' | ')];
    const said = plain.flatMap((spelling) => sayings.map((saying) => `${spelling} ${saying}`));
    const spellings = [...plain.slice(1), ...said].join(' | ');
    return unit(kind, name, pascal, spellings, exactCase ? { exactCase } : {});
  });
}
