import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { type QuantityKind, toInside, type UnitSystem } from '@pullbook/core/quantity';
import { unitOfSpelling } from '../text/unit-spelling.ts';

/** Units a log of the trade usually has, likeliest first, where the file names none. Common practice, no source. */
const USUAL: Partial<Record<QuantityKind, Record<UnitSystem, readonly string[]>>> = {
  engineSpeed: { us: ['rpm', 'krpm'], si: ['rpm', 'krpm'] },
  torque: { us: ['lb-ft', 'N·m'], si: ['N·m', 'lb-ft'] },
  power: { us: ['hp', 'kW', 'W'], si: ['kW', 'PS', 'W'] },
  gaugePressure: { us: ['psi', 'inHg', 'kPa'], si: ['bar', 'kPa', 'mbar', 'psi'] },
  absolutePressure: { us: ['inHg', 'psi', 'kPa'], si: ['kPa', 'bar', 'mbar', 'psi', 'mmHg'] },
  temperature: { us: ['°F', '°C', 'K'], si: ['°C', '°F', 'K'] },
  massFlow: { us: ['lb/h', 'lb/min'], si: ['kg/h', 'g/s'] },
  angle: { us: ['°'], si: ['°'] },
  time: { us: ['s', 'ms'], si: ['s', 'ms'] },
  voltage: { us: ['V'], si: ['V'] },
};

/** Highest readings that a pull's log usually shows, inside units; tells bar from kPa where the file is silent. */
const USUAL_HIGH: Partial<Record<ChannelMeaning, [low: number, high: number]>> = {
  boost: [15e3, 400e3],
  dischargePressure: [15e3, 450e3],
  oilPressure: [200e3, 1000e3],
  fuelPressure: [25e3, 1200e3],
  crankcasePressure: [-60e3, 30e3],
  power: [15e3, 2e6],
};

export interface UnitByRange {
  unit: string;
  /** The figures are usual ones under it. */
  fits: boolean;
  /** Other usual units under which they are usual too. */
  others: string[];
}

/** An absolute manifold pressure never falls below this at full load. Pa; common practice, no source. */
export const LOWEST_ABSOLUTE = 60e3;

/**
 * Unit for a column whose file names none: the first usual one under which the column's highest reading is a usual
 * value (and the lowest of an absolute manifold pressure one), of the file's own people before the others'; the first of
 * the list where none is.
 */
export function unitByRange(
  meaning: ChannelMeaning,
  range: { low: number; high: number },
  system: UnitSystem,
): UnitByRange {
  const { kind, typical } = MEANINGS[meaning];
  if (kind === 'ratio') return { unit: ratioUnit(meaning, range.high), fits: true, others: [] };
  const units = usualUnits(kind, system);
  const usual = USUAL_HIGH[meaning] ?? typical;
  const lowest = meaning === 'manifoldPressure' ? LOWEST_ABSOLUTE : Number.NEGATIVE_INFINITY;
  const fitting = units.filter((unit) => {
    const high = toInside(range.high, unit, kind);
    return (
      usual !== null && high >= usual[0] && high <= usual[1] && toInside(range.low, unit, kind) >= lowest
    );
  });
  const [first, ...others] = fitting;
  return { unit: first ?? units[0] ?? '', fits: first !== undefined, others };
}

/** Usual units of a kind, those of the file's own people first. */
export const usualUnits = (kind: QuantityKind, system: UnitSystem): string[] => [
  ...new Set([...(USUAL[kind]?.[system] ?? []), ...(USUAL[kind]?.[system === 'us' ? 'si' : 'us'] ?? [])]),
];

function ratioUnit(meaning: ChannelMeaning, high: number): string {
  if (meaning === 'throttle' || meaning === 'relativeHumidity') return high > 1.6 ? '%' : '';
  return meaning === 'lambda' ? 'λ' : '';
}

const US_UNITS = new Set(['lb-ft', 'hp', 'psi', '°F', 'inHg', 'inH2O', 'lb/h', 'lb/min', 'cfm', '°R']);

/** Which people's units the named units of a file are. A decimal comma counts for SI; without any sign, SI. */
export function systemOfUnits(unitTexts: readonly string[], decimalMark: '.' | ','): UnitSystem {
  let us = 0;
  let si = decimalMark === ',' ? 1 : 0;
  for (const text of unitTexts) {
    const unit = unitOfSpelling(text);
    if (!unit || unit.kind === 'engineSpeed' || unit.kind === 'time' || unit.kind === 'ratio') continue;
    if (US_UNITS.has(unit.name)) us += 1;
    else si += 1;
  }
  return us > si ? 'us' : 'si';
}
