import { type Fuel, type FuelSupply, type Induction, inductionOfSheet, usualLambda } from '../fuel/index.ts';
import type { ReachInput } from './model.ts';
import type { Following, Picked } from './picked.ts';

const inductionOf = (input: ReachInput, build: number): Induction =>
  inductionOfSheet(input.builds[build]!.sheet);

/** Another fuel, or boost where there was none, is mixed as much richer or leaner than is usual for it as the engine is now. */
export function lambdaOn(input: ReachInput, fuel: Fuel, build: number): number {
  const { supply } = input;
  const [before, after] = [inductionOf(input, 0), inductionOf(input, build)];
  if (fuel === supply.fuel && before === after) return supply.lambda;
  return (supply.lambda * usualLambda(fuel, after).usual) / usualLambda(supply.fuel, before).usual;
}

/** Whether somebody said how the engine is mixed; else it is as usual for its fuel, and a sheet with another fuel needs no line for it. */
export const isLambdaTold = (input: ReachInput): boolean =>
  input.supply.lambda !== usualLambda(input.supply.fuel, inductionOf(input, 0)).usual;

/** All between tank and cylinder of a rung: what is there now, with what was picked and what follows. */
export function supplyOf(input: ReachInput, picked: Picked, follows: Following): FuelSupply {
  const { supply } = input;
  const fuel = picked.fuel === null ? supply.fuel : input.fuels[picked.fuel]!.fuel;
  return {
    ...supply,
    fuel,
    lambda: lambdaOn(input, fuel, picked.build),
    injectors: follows.injectors === null ? supply.injectors : input.injectors[follows.injectors]!.injectors,
    pump: follows.pump === null ? supply.pump : input.pumps[follows.pump]!.pump,
  };
}
