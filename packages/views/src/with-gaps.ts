/** Lists whose members may be missing as a whole; a `null` of theirs is meant. */
const MAY_LACK_MEMBERS = new Set(['shapes']);

/** What came over the wire, with its gaps: JSON has no NaN and writes `null`, and no other list of a bundle holds a `null` of its own. */
export function withGaps<Value>(value: Value): Value {
  if (Array.isArray(value)) return value.map((one) => (one === null ? Number.NaN : withGaps(one))) as Value;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value).map(([name, one]) => [
      name,
      MAY_LACK_MEMBERS.has(name) && Array.isArray(one)
        ? one.map((member) => (member === null ? null : withGaps(member)))
        : withGaps(one),
    ]),
  ) as Value;
}
