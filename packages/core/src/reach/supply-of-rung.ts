import { type FuelSupply, type Induction, inductionOfSheet, usualLambda } from '../fuel/index.ts';
import type { ReachInput } from './model.ts';
import type { Following, Picked } from './picked.ts';

const inductionOf = (input: ReachInput, build: number): Induction =>
  inductionOfSheet(input.builds[build]!.sheet);

/**
 * All between tank and cylinder of a rung: what is there now, with what was picked and what follows. Another fuel, or boost where there was none, is
 * mixed as much richer or leaner than is usual for it as the engine is now.
 */
export function supplyOf(input: ReachInput, picked: Picked, follows: Following): FuelSupply {
  const { supply } = input;
  const fuel = picked.fuel === null ? supply.fuel : input.fuels[picked.fuel]!.fuel;
  const before = inductionOf(input, 0);
  const after = inductionOf(input, picked.build);
  const isMixedAlike = fuel === supply.fuel && before === after;
  return {
    ...supply,
    fuel,
    lambda: isMixedAlike
      ? supply.lambda
      : (supply.lambda * usualLambda(fuel, after).usual) / usualLambda(supply.fuel, before).usual,
    injectors: follows.injectors === null ? supply.injectors : input.injectors[follows.injectors]!.injectors,
    pump: follows.pump === null ? supply.pump : input.pumps[follows.pump]!.pump,
  };
}
