import type { ReachChange, Rung } from './model.ts';

/** A way to the target as far as a choice among them needs it. */
export interface Way {
  id: string;
  changes: readonly ReachChange[];
  cost: Rung['cost'];
  reaches: boolean;
  /** The more the better: the chance of what reaches, once there is one, else the figure as a share of the target. */
  likely: number;
  /** Least margin among the limits that bind. */
  margin: number;
}

/** Ways alike in what is changed that stand on a ladder before others had their turn. */
const ALIKE = 2;
/** Share by which more changes must be likelier, or have more margin, to be worth them: less is within what is known of either. */
const WORTH_MORE = 0.02;
/** Share of a limit that is enough to have left: more is no reason to change more. */
const MARGIN_ENOUGH = 0.1;
/** Of those that only come near, beside some that reach; and what share of the target is near. */
const MOST_NEAR = 3;
const NEAR = 0.95;

/** Cheapest first: those that reach before those that come near; then by cost, highest class, chance, fewer changes. */
export function inOrder(a: Way, b: Way): number {
  return (
    Number(b.reaches) - Number(a.reaches) ||
    a.cost.total - b.cost.total ||
    a.cost.highest - b.cost.highest ||
    b.likely - a.likely ||
    a.changes.length - b.changes.length ||
    (a.id < b.id ? -1 : Number(a.id > b.id))
  );
}

/**
 * Those worth showing, in their order: none that holds another's changes, costs no less and is no better for it; the same idea not more than twice before
 * every idea was shown; beside ways that reach only the nearest of the others.
 */
export function chosenOf<T extends Way>(ways: readonly T[], most: number): T[] {
  const worth = withoutWorse(ways);
  const reaching = worth.filter(({ reaches }) => reaches).sort(inOrder);
  const near = worth.filter(({ reaches }) => !reaches).sort((a, b) => b.likely - a.likely || inOrder(a, b));
  const taken = inTurns(reaching, most);
  if (taken.length === 0) return inTurns(near, most).sort(inOrder);
  const close = near.filter(({ likely }) => likely >= NEAR);
  return [...taken, ...inTurns(close, Math.min(most - taken.length, MOST_NEAR))].sort(inOrder);
}

/** Each of a list but those that another makes needless. */
export function withoutWorse<T extends Way>(ways: readonly T[]): T[] {
  const first = new Map(ways.map((way) => [way.id, way]));
  const once = [...first.values()];
  return once.filter((way) => !once.some((other) => other !== way && isNeedlessBeside(way, other)));
}

function isNeedlessBeside(way: Way, other: Way): boolean {
  if (way.reaches && !other.reaches) return false;
  const isMore = way.changes.length > other.changes.length;
  const room = isMore ? WORTH_MORE : 0;
  const margin = isMore ? Math.min(way.margin, MARGIN_ENOUGH) : way.margin;
  // An engine that is stopped earlier has more margin everywhere: no reason of its own to show it.
  const isStopped = way.changes.some(({ part }) => part === 'speedLimit');
  const isNoLikelier = (other.reaches && !way.reaches) || way.likely <= other.likely + room;
  const isNoBetter = isNoLikelier && (isStopped || margin <= other.margin + room);
  return isNoBetter && way.cost.total >= other.cost.total && holdsAll(way.changes, other.changes);
}

/** Whether a set holds every change of another; of the drive's sizes one stands for the other. */
function holdsAll(changes: readonly ReachChange[], others: readonly ReachChange[]): boolean {
  const names = new Set(changes.map(nameOf));
  return others.every((one) => names.has(nameOf(one)));
}

const nameOf = ({ part, said }: ReachChange): string =>
  part === 'pulley' || part === 'stepUp' ? 'drive' : OF_ONE_NAME.has(part) ? part : `${part} ${said.text}`;

const OF_ONE_NAME: ReadonlySet<string> = new Set(['injectors', 'pump', 'belt', 'speedLimit']);
const FOLLOWING: ReadonlySet<string> = new Set(['injectors', 'pump', 'belt']);

/** What kind of thing is done: `drive, fuel`. */
const ideaOf = ({ changes }: Way): string =>
  [...new Set(changes.map(nameOf).filter((name) => !FOLLOWING.has(name)))].sort().join(', ');

function inTurns<T extends Way>(ways: readonly T[], most: number): T[] {
  const shown = new Map<string, number>();
  const first: T[] = [];
  const later: T[] = [];
  for (const way of ways) {
    const idea = ideaOf(way);
    const count = shown.get(idea) ?? 0;
    (count < ALIKE ? first : later).push(way);
    shown.set(idea, count + 1);
  }
  return [...first, ...later].slice(0, Math.max(0, most));
}
