import type { Channel } from '@pullbook/core/pull';
import type { QuantityKind } from '@pullbook/core/quantity';
import { unitOfSpelling } from '../text/unit-spelling.ts';

/** How the inside unit of a kind is written at the edge. */
export interface EdgeUnit {
  /** For people: `N·m`. */
  name: string;
  /** At the end of a key: `Nm`. */
  suffix: string;
  /** Name in the QUDT vocabulary of units (from memory); `null`: none that fits. */
  qudt: string | null;
}

const unit = (name: string, suffix: string, qudt: string | null): EdgeUnit => ({ name, suffix, qudt });

export const EDGE_UNITS: Record<QuantityKind, EdgeUnit> = {
  engineSpeed: unit('r/min', 'Rpm', 'REV-PER-MIN'),
  sweepRate: unit('r/min/s', 'RpmPerS', null),
  torque: unit('N·m', 'Nm', 'N-M'),
  power: unit('W', 'W', 'W'),
  absolutePressure: unit('Pa', 'Pa', 'PA'),
  gaugePressure: unit('Pa', 'Pa', 'PA'),
  pressureDifference: unit('Pa', 'Pa', 'PA'),
  temperature: unit('K', 'K', 'K'),
  temperatureDifference: unit('K', 'K', 'K'),
  massFlow: unit('kg/s', 'KgPerS', 'KiloGM-PER-SEC'),
  volumeFlow: unit('m³/s', 'M3PerS', 'M3-PER-SEC'),
  length: unit('m', 'M', 'M'),
  area: unit('m²', 'M2', 'M2'),
  volume: unit('m³', 'M3', 'M3'),
  mass: unit('kg', 'Kg', 'KiloGM'),
  density: unit('kg/m³', 'KgPerM3', 'KiloGM-PER-M3'),
  speed: unit('m/s', 'MPerS', 'M-PER-SEC'),
  momentOfInertia: unit('kg·m²', 'KgM2', 'KiloGM-M2'),
  specificConsumption: unit('kg/J', 'KgPerJ', 'KiloGM-PER-J'),
  angle: unit('rad', 'Rad', 'RAD'),
  ratio: unit('1', 'Ratio', 'UNITLESS'),
  time: unit('s', 'S', 'SEC'),
  voltage: unit('V', 'V', 'V'),
  frequency: unit('Hz', 'Hz', 'HZ'),
  springRate: unit('N/m', 'NPerM', 'N-PER-M'),
  force: unit('N', 'N', 'N'),
};

/** Unit in which a channel's values stand: the inside unit, or the file's own where it is no known one. */
export function edgeUnitOfChannel({ meaning, unit: unitText, kind }: Channel): EdgeUnit {
  const keptAsWritten = meaning === 'other' && unitText !== '' && unitOfSpelling(unitText) === null;
  return keptAsWritten ? { name: unitText, suffix: '', qudt: null } : EDGE_UNITS[kind];
}
