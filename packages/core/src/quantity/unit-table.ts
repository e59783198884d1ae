import type { QuantityKind } from './model.ts';
import type { Unit } from './unit.ts';
import { UNITS_OF_FLOW } from './units-of-flow.ts';
import { UNITS_OF_MATTER } from './units-of-matter.ts';
import { UNITS_OF_PRESSURE } from './units-of-pressure.ts';
import { UNITS_OF_SIZE } from './units-of-size.ts';
import { UNITS_OF_TEMPERATURE } from './units-of-temperature.ts';
import { UNITS_OF_THE_REST } from './units-of-the-rest.ts';
import { UNITS_OF_TORQUE_AND_POWER } from './units-of-torque-and-power.ts';
import { UNITS_OF_TURNING } from './units-of-turning.ts';

/**
 * The closed list: what is not here is refused. Where a spelling belongs to several kinds and none is asked for, the earlier
 * row wins.
 */
export const UNITS: readonly Unit[] = [
  ...UNITS_OF_TURNING,
  ...UNITS_OF_TORQUE_AND_POWER,
  ...UNITS_OF_PRESSURE,
  ...UNITS_OF_TEMPERATURE,
  ...UNITS_OF_FLOW,
  ...UNITS_OF_SIZE,
  ...UNITS_OF_MATTER,
  ...UNITS_OF_THE_REST,
];

/** All units of one kind, the usual ones first. */
export function unitsOfKind(kind: QuantityKind): Unit[] {
  return UNITS.filter((entry) => entry.kind === kind);
}

/**
 * The unit a spelling stands for; `null` where it is not in the list or another case of it could be another unit.
 * With a kind only that kind is searched. Without, a spelling of several kinds gives the first: `psi` absolute pressure,
 * `°C` temperature, `Hz` frequency; `unitsFor` gives them all.
 *
 * @example unitFor('ft lb')?.name // 'lb-ft'
 * @example unitFor('psia', 'gaugePressure') // null
 */
export function unitFor(spelling: string, kind?: QuantityKind): Unit | null {
  return unitsFor(spelling).find((entry) => kind === undefined || entry.kind === kind) ?? null;
}

/** Every unit a spelling can stand for, at most one a kind. */
export function unitsFor(spelling: string): Unit[] {
  const key = foldedSpelling(spelling);
  const exact = EXACT.get(key) ?? [];
  const forgiving = CASE_FORGIVEN.get(key.toLowerCase()) ?? [];
  return [...exact, ...forgiving.filter((entry) => !exact.some((other) => other.kind === entry.kind))];
}

/** A spelling without what is forgiven: spaces, multiplication signs, brackets, raised digits, look-alike signs. */
export function foldedSpelling(spelling: string): string {
  return spelling
    .normalize('NFKC')
    .replace(/[\s()^]/gu, '')
    .replace(/º|˚/gu, '°')
    .replace(/−/gu, '-')
    .replace(/μ/gu, 'µ')
    .replace(/[·⋅•∙*]/gu, '')
    .replace(/(?<=\p{L})[.-](?=\p{L}|$)/gu, '');
}

const EXACT = tableBy(UNITS, (key) => key);
const CASE_FORGIVEN = tableBy(
  UNITS.filter((entry) => !entry.exactCase),
  (key) => key.toLowerCase(),
);

function tableBy(units: readonly Unit[], keyOf: (folded: string) => string): Map<string, Unit[]> {
  const table = new Map<string, Unit[]>();
  for (const entry of units) {
    for (const key of new Set(entry.spellings.map((spelling) => keyOf(foldedSpelling(spelling))))) {
      const known = table.get(key) ?? [];
      const clash = known.find((other) => other.kind === entry.kind);
      if (clash) throw new Error(`unit spelling "${key}" stands for both ${clash.id} and ${entry.id}`);
      table.set(key, [...known, entry]);
    }
  }
  return table;
}
