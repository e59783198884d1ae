import type { MatchBands } from '@pullbook/core/airpath';
import type { MatchBundle } from '../match-model.ts';

/**
 * A bundle as it came over the wire, with its gaps. JSON has no NaN and writes `null`; no list of a bundle holds a `null` of
 * its own, so that every `null` in a list of numbers was a gap.
 *
 * @example revivedBundle(JSON.parse(text))
 */
export const revivedBundle = (bundle: MatchBundle): MatchBundle => withGaps(bundle);

/** The same of bands. */
export const revivedBands = (bands: MatchBands): MatchBands => withGaps(bands);

function withGaps<Value>(value: Value): Value {
  if (Array.isArray(value))
    return value.map((one: unknown) => (one === null ? Number.NaN : withGaps(one))) as Value;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, withGaps(one)])) as Value;
}
