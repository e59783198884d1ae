import { driveChange } from './drive-change.ts';
import type { CostClass, ReachChange } from './model.ts';
import {
  beltChange,
  breathingChange,
  coolerChange,
  fuelChange,
  injectorsChange,
  pumpChange,
  speedLimitChange,
} from './part-changes.ts';
import type { Following, Picked } from './picked.ts';
import type { SearchGround } from './search-ground.ts';

/** Every change of a rung, those that were picked and those that follow, in the order in which they are told. */
export function changesFor(ground: SearchGround, picked: Picked, follows: Following): ReachChange[] {
  const { input, once } = ground;
  const { drive } = picked;
  const build = input.builds[picked.build]!;
  const of = <T>(
    list: readonly T[],
    place: number | null,
    made: (one: T) => ReachChange,
    name: string,
  ): ReachChange[] =>
    place === null ? [] : [once(`${name} ${place} on ${picked.build}`, () => made(list[place]!))];
  return [
    ...(build.change === null ? [] : [build.change]),
    ...(drive === null
      ? []
      : [
          once(`${drive.by} ${drive.size} on ${picked.build}`, () =>
            driveChange(build, drive, costOfSize(ground, picked)),
          ),
        ]),
    ...of(input.coolers, picked.cooler, (one) => coolerChange(one, build), 'cooler'),
    ...picked.breathing.flatMap((place) => of(input.breathing, place, breathingChange, 'breathing')),
    ...of(input.fuels, picked.fuel, (one) => fuelChange(one, input, picked.build), 'fuel'),
    ...of(input.speedLimits, picked.speedLimit, speedLimitChange, 'limit'),
    ...of(input.injectors, follows.injectors, injectorsChange, 'injectors'),
    ...of(input.pumps, follows.pump, pumpChange, 'pump'),
    ...of(input.beltRibs, follows.beltRibs, beltChange, 'belt'),
  ];
}

/** Of the list; a size between those of the list has none. */
function costOfSize({ sizes }: SearchGround, { build, drive }: Picked): CostClass {
  return sizes(build, drive!.by).find(({ size }) => size === drive!.size)?.cost ?? 0;
}
