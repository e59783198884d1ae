import type { CostClass, ReachChange, Rung } from './model.ts';

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

/** Of the first rungs each is another idea, where there are as many. */
const FIRST = 6;
/** Each class costs as much as four things of the one below: several small things never outweigh a dear one. */
const WEIGHT = 4;
/** Share by which more changes must be likelier, or have more margin, to be worth them: less is within what is known of either. */
const WORTH_MORE = 0.02;
/** Share of a limit that is enough to have left: more is no reason to change more. */
const MARGIN_ENOUGH = 0.1;
/** Of those that only come near, beside some that reach; and what share of the target is near. */
const MOST_NEAR = 3;
const NEAR = 0.95;

/**
 * What a set of changes costs: the highest class of them, which is the word that is shown, and 4 to the power of each class, summed.
 *
 * @example costOf([pulley, cooler]) // { highest: 3, total: 4 + 64 }
 */
export const costOf = (changes: readonly Pick<ReachChange, 'cost'>[]): Rung['cost'] => ({
  total: changes.reduce((sum, { cost }) => sum + (cost === 0 ? 0 : WEIGHT ** cost), 0),
  highest: Math.max(0, ...changes.map(({ cost }) => cost)) as CostClass,
});

/**
 * Cheapest first: those that reach before those that come near; then by the highest class of cost, so that its word never falls along the ladder, and all that
 * it costs; an engine that is stopped earlier after one that is not; then by chance, fewer changes.
 */
export function inOrder(a: Way, b: Way): number {
  return (
    Number(b.reaches) - Number(a.reaches) ||
    a.cost.highest - b.cost.highest ||
    a.cost.total - b.cost.total ||
    Number(isStopped(a)) - Number(isStopped(b)) ||
    b.likely - a.likely ||
    a.changes.length - b.changes.length ||
    (a.id < b.id ? -1 : Number(a.id > b.id))
  );
}

/** Whether it gives up speeds that the engine has now. */
const isStopped = ({ changes }: Way): boolean => changes.some(({ part }) => part === 'speedLimit');

/**
 * Those worth showing, in their order: none that holds another's changes, costs no less and is no better for it; no idea twice among the first, where there
 * are as many; beside ways that reach only the nearest of the others.
 */
export function chosenOf<T extends Way>(ways: readonly T[], most: number): T[] {
  const worth = withoutWorse(ways);
  const reaching = worth.filter(({ reaches }) => reaches).sort(inOrder);
  const near = worth.filter(({ reaches }) => !reaches).sort((a, b) => b.likely - a.likely || inOrder(a, b));
  const taken = byIdea(reaching, most);
  if (taken.length === 0) return byIdea(near, most).sort(inOrder);
  const close = near.filter(({ likely }) => likely >= NEAR);
  return [...taken, ...byIdea(close, Math.min(most - taken.length, MOST_NEAR))].sort(inOrder);
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
  const isNoLikelier = (other.reaches && !way.reaches) || way.likely <= other.likely + room;
  const isNoBetter = isNoLikelier && (isStopped(way) || margin <= other.margin + room);
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

/** What kind of thing is done, whichever pulley, fuel or cooler it is done with: `drive, fuel`. */
const ideaOf = ({ changes }: Way): string =>
  [...new Set(changes.map(ideaOfChange).filter((name) => !FOLLOWING.has(name)))].sort().join(', ');

function ideaOfChange(change: ReachChange): string {
  if (change.part === 'fuel') return isAlcohol(change) ? 'alcohol' : 'fuel';
  return change.part === 'cooler' ? 'cooler' : nameOf(change);
}

/** By what it writes on the sheet: an alcohol asks for other injectors, pump and hoses, another gasoline for a drum. */
const isAlcohol = ({ edits }: ReachChange): boolean =>
  edits.some(
    ({ section, field, text }) =>
      section === 'fuel' &&
      (field === 'ethanolShare' ||
        field === 'methanolShare' ||
        (field === 'name' && /ethanol|\b[em]\d/iu.test(text ?? ''))),
  );

/** At most so many of a list in order: the first of each idea; a further one of an idea stands behind the first rungs, or fills them where ideas are few. */
function byIdea<T extends Way>(ways: readonly T[], most: number): T[] {
  const shown = new Set<string>();
  const firsts: T[] = [];
  const further: T[] = [];
  for (const way of ways) {
    const idea = ideaOf(way);
    (shown.has(idea) ? further : firsts).push(way);
    shown.add(idea);
  }
  const last = firsts.length >= FIRST ? firsts[FIRST - 1]! : null;
  const behind = further.filter((way) => last === null || ways.indexOf(way) > ways.indexOf(last));
  return [...firsts, ...behind].slice(0, Math.max(0, most));
}
