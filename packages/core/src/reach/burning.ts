import { type MatchCase, withOtherFuel } from '../airpath/index.ts';
import { deriveFigures } from '../combination/index.ts';
import { type ChargeAtLoad, type Fuel, type FuelEffect, fuelEffect, isSameFuel } from '../fuel/index.ts';
import { burningRoughly } from './burning-roughly.ts';
import type { MadeEngine } from './made-engine.ts';
import type { ReachInput } from './model.ts';
import type { Picked } from './picked.ts';
import type { SearchGround } from './search-ground.ts';

/** Compression ratio, and exhaust over ambient pressure, of an engine of which neither is known (common practice, no source). */
const USUAL = { compressionRatio: 9.5, exhaustRatio: 1.05 };

/** A made engine on the fuel that was picked. */
export interface Burning {
  match: MatchCase | null;
  /** On the work of a naturally aspirated engine at each node; `null`: the same fuel, or supercharged. */
  fuelFactor: number[] | null;
  /** `null`: the same fuel, or only looked at roughly. */
  effect: FuelEffect | null;
}

/** Last of all that is done to a match: what another fuel does to its charge and its work. */
export function burning(made: MadeEngine, ground: SearchGround, picked: Picked): Burning {
  const { match, supply } = made;
  const { fuel, mixes } = ground.input.supply;
  // The engine alone was pulled on what its baseline was pulled on, whatever is in the tank now.
  const before = match === null ? fuelOfBaseline(ground.input) : fuel;
  // As the new fuel is mixed, which is what a match of the changed sheet takes.
  const { fuel: after, lambda } = supply;
  if (isSameFuel(before, after)) return { match, fuelFactor: null, effect: null };
  if (match !== null) {
    if (ground.isRough)
      return { match: burningRoughly(match, ground, picked), fuelFactor: null, effect: null };
    const other = withOtherFuel(match, { before, after, lambda, mixes });
    return { match: other.match, fuelFactor: null, effect: other.effect };
  }
  const effects = ground.once(`what fuel ${picked.fuel} does on ${picked.build}`, () =>
    chargesOf(made, lambda).map((charge) => fuelEffect(before, after, charge, mixes)),
  );
  return { match: null, fuelFactor: effects.map(({ work }) => work), effect: effects.at(-1) ?? null };
}

/** On which the pulls behind the engine alone were made. */
export const fuelOfBaseline = ({ builds, supply }: ReachInput): Fuel =>
  builds.find(({ madeOf }) => madeOf?.fuelBehind !== undefined)?.madeOf?.fuelBehind ?? supply.fuel;

/** The charge of the engine without a supercharger, at each node. */
function chargesOf({ baseline, sheet }: MadeEngine, lambda: number): ChargeAtLoad[] {
  const compressionRatio =
    deriveFigures(sheet).find(({ id }) => id === 'compressionRatio')?.value ?? USUAL.compressionRatio;
  return baseline.engineSpeedRpm.map((engineSpeedRpm, node) => ({
    engineSpeedRpm,
    manifoldPressure: baseline.manifoldPressure[node]!,
    manifoldTemperature: baseline.manifoldTemperature[node]!,
    compressionRatio,
    exhaustPressure: baseline.air.pressure * USUAL.exhaustRatio,
    lambda,
  }));
}
