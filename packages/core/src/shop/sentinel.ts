import { mean } from '../numeric/index.ts';
import type { Cluster } from './clusters.ts';
import { groupedBy } from './grouped-by.ts';
import { levelsOver, sharedProfile } from './profile.ts';

/** Pulls in a row of which the last is held against the first though nothing else was pulled in between. */
const PULLS_IN_A_ROW = 4;

/**
 * The last pulls of a combination against its first, as a share: of the one that spans the session longest. Its first are
 * those before anything else was pulled, its last those after; of one pulled four times in a row, the first and the last
 * pull. `null`: nothing came back.
 *
 * @example sentinelOf(clustersOf(digests)) // -0.012: 1.2 % lower at the end than at the start
 */
export function sentinelOf(ofSession: readonly Cluster[]): number | null {
  const combinations = groupedBy(ofSession, ({ combinationId, footing }) => `${combinationId}\n${footing}`);
  const moved = combinations.flatMap((own) => {
    const others = ofSession.filter((one) => !own.includes(one)).flatMap(hoursOf);
    return lastAgainstFirst(pullsOf(own), others);
  });
  return moved.toSorted((one, other) => other.span - one.span)[0]?.share ?? null;
}

export const hoursOf = ({ pulls }: Pick<Cluster, 'pulls'>): number[] =>
  pulls.flatMap(({ hours }) => hours ?? []);

interface TimedLevel {
  hours: number;
  level: number;
}

/** Pulls of several set-ups of one combination in time, their levels over the speeds that all share. */
function pullsOf(own: readonly Cluster[]): TimedLevel[] {
  const profiles = own.map(({ profile }) => profile);
  const shared = sharedProfile(profiles);
  if (shared === null) return [];
  const levels = levelsOver(profiles, shared);
  return own
    .flatMap(({ pulls }, at) => {
      const middle = mean(pulls.map(({ level }) => level));
      return pulls.flatMap(({ hours, level }) =>
        hours === null ? [] : [{ hours, level: levels[at]! + level - middle }],
      );
    })
    .toSorted((one, other) => one.hours - other.hours);
}

function lastAgainstFirst(
  pulls: readonly TimedLevel[],
  others: readonly number[],
): { span: number; share: number }[] {
  const [first, last] = [pulls[0], pulls.at(-1)];
  if (first === undefined || last === undefined || last.hours <= first.hours) return [];
  const between = others.filter((hours) => hours > first.hours && hours < last.hours);
  if (between.length === 0 && pulls.length < PULLS_IN_A_ROW) return [];
  const [left, back] = [Math.min(...between), Math.max(...between)];
  const early = between.length === 0 ? [first] : pulls.filter(({ hours }) => hours < left);
  const late = between.length === 0 ? [last] : pulls.filter(({ hours }) => hours > back);
  const level = (some: readonly TimedLevel[]) => mean(some.map((one) => one.level));
  return [{ span: last.hours - first.hours, share: Math.expm1(level(late) - level(early)) }];
}
