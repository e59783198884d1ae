import type { ReachInput } from './model.ts';
import { isHotterWith, isOtherCooler, isOtherFuel } from './part-changes.ts';
import { changesOf, type DriveChoice, type Picked } from './picked.ts';

/** A set of changes but for the size of what is changed in the drive, which is searched for. */
export interface Group {
  picked: Picked;
  /** `null`: the drive stays as it is */
  sizesOf: DriveChoice['by'] | null;
}

/**
 * All sets of changes that a rung may have, those of few changes first, so that the first rungs of a search are the simple ones. Only what
 * differs from what is there counts as a choice.
 */
export function groupsOf(input: ReachInput): Group[] {
  const groups: Group[] = [];
  for (const [build, one] of input.builds.entries()) {
    const isCharged = one.match !== null;
    const coolers = isCharged ? placesOf(input.coolers, (cooler) => isOtherCooler(cooler, one)) : [null];
    for (const cooler of coolers)
      for (const fuel of placesOf(input.fuels, (other) => isOtherFuel(other, input)))
        for (const breathing of subsetsOf(input.breathing.length))
          for (const speedLimit of placesOf(input.speedLimits, () => true)) {
            const picked: Picked = { build, drive: null, cooler, fuel, breathing, speedLimit };
            const changes = changesOf(picked, one.change === null);
            if (changes > input.mostChanges) continue;
            // A fuel that stands a hotter charge would be praised for a loss that was never taken off.
            if (cooler !== null && fuel !== null && isHotterWith(input.coolers[cooler]!, one)) continue;
            groups.push({ picked, sizesOf: null });
            if (!isCharged || changes === input.mostChanges) continue;
            for (const sizesOf of ['blowerPulley', 'crankPulley', 'stepUp'] as const)
              groups.push({ picked, sizesOf });
          }
  }
  const count = ({ picked, sizesOf }: Group): number =>
    changesOf(picked, input.builds[picked.build]!.change === null) + (sizesOf === null ? 0 : 1);
  return groups
    .map((group, place) => ({ group, place, count: count(group) }))
    .sort((a, b) => a.count - b.count || a.place - b.place)
    .map(({ group }) => group);
}

/** As it is, and every place of a list that is something else. */
function placesOf<T>(list: readonly T[], isOther: (one: T) => boolean): (number | null)[] {
  return [null, ...list.flatMap((one, place) => (isOther(one) ? [place] : []))];
}

/** None, each, each two at once. */
function subsetsOf(count: number): number[][] {
  const subsets: number[][] = [[]];
  for (let one = 0; one < count; one++) {
    subsets.push([one]);
    for (let other = one + 1; other < count; other++) subsets.push([one, other]);
  }
  return subsets;
}
