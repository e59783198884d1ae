import type { LimitId } from '../rule/index.ts';
import { type Group, groupsOf } from './groups.ts';
import { type Judged, judged } from './judged.ts';
import type { ReachInput } from './model.ts';
import type { Following, Picked } from './picked.ts';
import { type SearchGround, searchGround } from './search-ground.ts';

/** What was found of one set of changes, in numbers alone: it goes between threads. */
export interface ScreenedOne {
  picked: Picked;
  follows: Following;
  /** Of the target, in its standard. */
  figure: number;
  /** Least margin among the limits that bind; infinite where none is known. */
  margin: number;
  reaches: boolean;
  holds: boolean;
  /** Limits passed, with by what share. */
  passed: { id: LimitId; share: number }[];
}

export interface Screened {
  /** Of all groups, in their own order. */
  groups: { place: number; found: ScreenedOne[] }[];
  /** Sets of changes that were looked at, those that were passed over as slower or faster than needed among them. */
  combinations: number;
  solved: number;
}

/** Nodes of a baseline that are solved while a search looks for what may serve. */
export const SCREENED_NODES = 16;

/** A rung is also looked for that reaches the target with this share to spare: what just reaches it does so every other time. */
const TO_SPARE = 0.03;

/**
 * Part `part` of `of` of a search: for each set of changes the slowest drive that reaches the target within the limits, one with more to spare, and
 * the best within the limits where none does. Parts made apart and put together say the same as one.
 *
 * @example ladderOf(input, [screenReach(input, { part: 0, of: 2 }), screenReach(input, { part: 1, of: 2 })])
 */
export function screenReach(input: ReachInput, { part, of }: { part: number; of: number }): Screened {
  const ground = searchGround(input, SCREENED_NODES);
  const screened: Screened = { groups: [], combinations: 0, solved: 0 };
  const groups = groupsOf(input);
  // Neighbours share most of what is worked out for them, and the first are the simplest.
  const from = Math.floor((groups.length * part) / of);
  const to = Math.floor((groups.length * (part + 1)) / of);
  for (let place = from; place < to; place++) {
    const look = lookedAt(ground, groups[place]!);
    screened.groups.push({ place, found: look.found });
    screened.combinations += look.combinations;
    screened.solved += look.solved;
  }
  return screened;
}

/** How many sets of changes there are, to lay a search out in parts. */
export const groupCount = (input: ReachInput): number => groupsOf(input).length;

function lookedAt(
  ground: SearchGround,
  { picked, sizesOf }: Group,
): { found: ScreenedOne[]; combinations: number; solved: number } {
  if (sizesOf === null) {
    const one = judged(ground, picked);
    return { found: one === null ? [] : [numbersOf(one)], combinations: 1, solved: 1 };
  }
  const sizes = ground.sizes(picked.build, sizesOf);
  const known = new Map<number, ScreenedOne | null>();
  const at = (place: number): ScreenedOne | null => {
    const before = known.get(place);
    if (before !== undefined) return before;
    const { by, size } = sizes[place]!;
    const one = judged(ground, { ...picked, drive: { by, size } });
    const numbers = one === null ? null : numbersOf(one);
    known.set(place, numbers);
    return numbers;
  };
  const found = sizes.length === 0 ? [] : bestOf(sizes.length, at, ground.input.target.power, known);
  return { found, combinations: sizes.length, solved: known.size };
}

/**
 * Sizes stand slowest first. Power rises with speed and limits come nearer, so that both ends of what serves are found by halving; where what
 * was looked at says otherwise (a choked line, a limit that eases), every size is looked at.
 */
function bestOf(
  count: number,
  at: (place: number) => ScreenedOne | null,
  power: number,
  known: ReadonlyMap<number, ScreenedOne | null>,
): ScreenedOne[] {
  const last = count - 1;
  if (firstWhere(count, (place) => isAtLeast(at(place), power)) <= last)
    firstWhere(count, (place) => isAtLeast(at(place), power * (1 + TO_SPARE)));
  firstWhere(count, (place) => at(place)?.holds !== true);
  at(last);
  if (!isOrdered(known)) for (let place = 0; place < count; place++) at(place);
  const all = [...known.entries()]
    .sort(([a], [b]) => a - b)
    .flatMap(([, one]) => (one === null ? [] : [one]));
  const serving = all.filter(({ reaches, holds }) => reaches && holds);
  const within = all.filter(({ holds }) => holds);
  const over = all.find(({ reaches, holds }) => reaches && !holds);
  if (serving.length > 0) {
    const [least] = serving;
    const more = serving.find(({ figure }) => figure >= power * (1 + TO_SPARE)) ?? serving.at(-1)!;
    return more === least ? [least!] : [least!, more];
  }
  const best = within.reduce<ScreenedOne | null>(
    (most, one) => (most === null || one.figure > most.figure ? one : most),
    null,
  );
  return [...(best === null ? [] : [best]), ...(over === undefined ? [] : [over])];
}

const isAtLeast = (one: ScreenedOne | null, power: number): boolean => one !== null && one.figure >= power;

/** First place for which something holds that holds from there on; the count where it never does. */
function firstWhere(count: number, holds: (place: number) => boolean): number {
  let low = 0;
  let high = count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (holds(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Whether faster drives made more power and passed limits that slower ones did not, as far as was looked. */
function isOrdered(known: ReadonlyMap<number, ScreenedOne | null>): boolean {
  const seen = [...known.entries()].sort(([a], [b]) => a - b).map(([, one]) => one);
  return seen.every((one, place) => {
    const next = seen[place + 1];
    if (next === undefined) return true;
    if (one === null || next === null) return false;
    return next.figure >= one.figure && (one.holds || !next.holds);
  });
}

function numbersOf({ picked, follows, figure, readings, passed, reaches, holds }: Judged): ScreenedOne {
  const margins = readings.filter(({ binds }) => binds).map(({ margin }) => margin);
  return {
    picked,
    follows,
    figure,
    margin: Math.min(Number.POSITIVE_INFINITY, ...margins),
    reaches,
    holds,
    passed: passed.map(({ id, margin }) => ({ id, share: -margin })),
  };
}
