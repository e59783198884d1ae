import type { Enquiry, KeptAnswer } from '@pullbook/core/reach';
import type { LimitFinding } from '@pullbook/core/rule';
import { EDGE_UNITS } from './edge-units.ts';

/** Names at the edge of what stands in an inside unit in a kept answer, wherever it stands there: the unit comes last. */
const NAMES = {
  power: 'powerW',
  reached: 'reachedW',
  peakPower: 'peakPowerW',
  boost: 'boostPa',
  boostCap: 'boostCapPa',
  highestBoost: 'highestBoostPa',
  airFlow: 'airFlowKgPerS',
  fuelFlow: 'fuelFlowKgPerS',
  correctedFlow: 'correctedFlowKgPerS',
  blowerPulleyDiameter: 'blowerPulleyDiameterM',
  evaporationCooling: 'evaporationCoolingK',
  pressure: 'pressurePa',
  temperature: 'temperatureK',
} as const;
type Names = typeof NAMES;

/** A limit's `value` and `threshold` are in `unit`, the inside unit of its kind. */
type Edge<T> = T extends readonly (infer Item)[]
  ? Edge<Item>[]
  : T extends LimitFinding
    ? T & { unit: string }
    : T extends object
      ? { [Key in keyof T as Key extends keyof Names ? Names[Key] : Key]: Edge<T[Key]> }
      : T;

/** An enquiry as `book.json` writes it; what was asked stays in the words it was asked in. */
export type EdgeEnquiry = Omit<Enquiry, 'answer'> & { answer: Edge<KeptAnswer> };

export function edgeFromEnquiry({ answer, ...rest }: Enquiry): EdgeEnquiry {
  return { ...rest, answer: renamed(answer, NAMES, withUnit) as Edge<KeptAnswer> };
}

/** Throws where what must be there is not: an answer that was given can never be mended in the book. */
export function enquiryFromEdge({ answer, ...rest }: EdgeEnquiry): Enquiry {
  for (const list of ['pullIds', 'became', 'cards'] as const) {
    const given: unknown = rest[list];
    if (!Array.isArray(given) || given.some((one) => one == null))
      throw new Error(`enquiry ${rest.id} has no list of ${list}`);
  }
  const inside = renamed(answer, INSIDE_NAMES, withoutUnit) as Partial<KeptAnswer> | null;
  if (!Array.isArray(inside?.answer?.rungs) || !Array.isArray(inside.near))
    throw new Error(`enquiry ${rest.id} has no answer`);
  return { ...rest, answer: inside as KeptAnswer };
}

const INSIDE_NAMES: Record<string, string> = Object.fromEntries(
  Object.entries(NAMES).map(([inside, edge]) => [edge, inside]),
);

type Fields = Record<string, unknown>;

/** The same with other names of its fields, at any depth; `mend`: what becomes of each object besides. */
function renamed(
  value: unknown,
  names: Readonly<Record<string, string>>,
  mend: (one: Fields) => Fields,
): unknown {
  if (Array.isArray(value)) return value.map((one) => renamed(one, names, mend));
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value).map(([name, one]) => [
    Object.hasOwn(names, name) ? names[name] : name,
    renamed(one, names, mend),
  ]);
  return mend(Object.fromEntries(fields) as Fields);
}

const isLimit = (one: Fields): boolean => 'threshold' in one && 'kind' in one;

const withUnit = (one: Fields): Fields =>
  isLimit(one) ? { ...one, unit: EDGE_UNITS[one.kind as LimitFinding['kind']].name } : one;

function withoutUnit(one: Fields): Fields {
  if (!isLimit(one)) return one;
  const { unit: _, ...rest } = one;
  return rest;
}
