import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import {
  displayUnit,
  fromInside,
  type QuantityKind,
  type Unit,
  type UnitSystem,
  unitFor,
} from '@pullbook/core/quantity';

/** The unit of a column that leaves the shop. */
export interface OutUnit {
  /** `kW`; '' where there is none. */
  name: string;
  /** At the end of a key: `Kw`. */
  suffix: string;
  qudt: string | null;
  /** A value of the inside unit in this one; `null`: no figure. */
  from(value: number | null | undefined): number | null;
}

/** The unit in which people of a system read a kind; shares of full (throttle, humidity) are per cent. */
export function outUnit(
  kind: QuantityKind,
  system: UnitSystem,
  meaning: ChannelMeaning | null = null,
): OutUnit {
  return asOutUnit((kind === 'ratio' && meaning !== null && ratioUnit(meaning)) || displayUnit(kind, system));
}

/** Words for units that have no letters of their own. */
const SAID: Record<string, string> = { '%': 'Percent', λ: 'Lambda', '°': 'Deg', '': '', N·m: 'Nm' };

/** As it stands: values of what no table of units knows. */
export const asWritten = (name: string): OutUnit => ({
  name,
  suffix: '',
  qudt: null,
  from: (value) => finite(value),
});

/** Label and unit of a meaning of the closed list. */
export const outMeaning = (
  meaning: ChannelMeaning,
  system: UnitSystem,
): { label: string; unit: OutUnit } => ({
  label: MEANINGS[meaning].label,
  unit: outUnit(MEANINGS[meaning].kind, system, meaning),
});

const SHARES: readonly ChannelMeaning[] = ['throttle', 'relativeHumidity'];

function ratioUnit(meaning: ChannelMeaning): Unit | null {
  if (meaning === 'lambda') return unitFor('λ', 'ratio');
  return SHARES.includes(meaning) ? unitFor('%', 'ratio') : null;
}

function asOutUnit(unit: Unit): OutUnit {
  return {
    name: unit.name,
    suffix: suffixOf(unit.name),
    qudt: QUDT[unit.name] ?? null,
    from: (value) => {
      const inside = finite(value);
      return inside === null ? null : fromInside(inside, unit);
    },
  };
}

const finite = (value: number | null | undefined): number | null =>
  value == null || !Number.isFinite(value) ? null : value;

/** `kW` is `Kw`, `kg/h` `KgPerH`, `°C` `C`, `m³/h` `M3PerH`: letters and digits, each word with a capital. */
function suffixOf(name: string): string {
  const said = SAID[name];
  if (said !== undefined) return said;
  return name
    .normalize('NFKD')
    .replaceAll('/', ' per ')
    .split(/[^A-Za-z0-9]+/)
    .filter(Boolean)
    .map((word) => word[0]!.toUpperCase() + word.slice(1).toLowerCase())
    .join('');
}

/** From memory of the vocabulary. */
const QUDT: Record<string, string> = {
  rpm: 'REV-PER-MIN',
  N·m: 'N-M',
  'lb-ft': 'FT-LB_F',
  kW: 'KiloW',
  hp: 'HP',
  kPa: 'KiloPA',
  psi: 'PSI',
  inHg: 'IN_HG',
  '°C': 'DEG_C',
  '°F': 'DEG_F',
  K: 'K',
  'kg/h': 'KiloGM-PER-HR',
  'lb/h': 'LB-PER-HR',
  '%': 'PERCENT',
  '°': 'DEG',
  s: 'SEC',
  V: 'V',
  Hz: 'HZ',
};

/** Per cent, for gains. */
export const PER_CENT: OutUnit = asOutUnit(unitFor('%', 'ratio')!);
