import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { type QuantityKind, toInside, type UnitSystem } from '@pullbook/core/quantity';
import { unitOfSpelling } from '../text/unit-spelling.ts';

/** Units a log of the trade usually has, likeliest first, where the file names none. Common practice, no source. */
const USUAL: Partial<Record<QuantityKind, Record<UnitSystem, readonly string[]>>> = {
  engineSpeed: { us: ['rpm', 'krpm'], si: ['rpm', 'krpm'] },
  torque: { us: ['lb-ft', 'N·m'], si: ['N·m', 'lb-ft'] },
  power: { us: ['hp', 'kW', 'W'], si: ['kW', 'PS', 'W'] },
  gaugePressure: { us: ['psi', 'inHg', 'kPa'], si: ['bar', 'kPa', 'mbar', 'psi'] },
  absolutePressure: { us: ['inHg', 'psi', 'kPa'], si: ['kPa', 'bar', 'mbar', 'psi'] },
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

/**
 * Unit for a column whose file names none: the first usual one under which the column's highest reading is a usual
 * value; the first of the list where none is.
 */
export function unitByRange(
  meaning: ChannelMeaning,
  range: { low: number; high: number },
  system: UnitSystem,
): { unit: string; fits: boolean } {
  const { kind, typical } = MEANINGS[meaning];
  if (kind === 'ratio') return { unit: ratioUnit(meaning, range.high), fits: true };
  const units = USUAL[kind]?.[system] ?? [];
  const usual = USUAL_HIGH[meaning] ?? typical;
  const fitting = units.find((unit) => {
    const high = toInside(range.high, unit, kind);
    return usual !== null && high >= usual[0] && high <= usual[1];
  });
  return { unit: fitting ?? units[0] ?? '', fits: fitting !== undefined };
}

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
