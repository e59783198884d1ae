import { blendOf } from './blend.ts';
import { evaporationCooling } from './evaporation.ts';
import type { Fuel } from './model.ts';
import { molarMassOf } from './stoichiometry.ts';
import { SUBSTANCES } from './substances.ts';

/** Lambda at which the cooling of carburettors is told. */
const USUAL_LAMBDA = 0.85;
/**
 * K by which a fuel would cool its charge were all of it to evaporate, over K by which it does before the manifold: of blow-through carburettors on gasoline,
 * ethanol and methanol (17 to 33, 33 to 67, 67 to 111 K; common practice, no source). The colder the charge gets, the less evaporates.
 */
const COOLED: readonly (readonly [whole: number, seen: number])[] = (
  [
    ['gasoline', 20],
    ['ethanol', 50],
    ['methanol', 90],
  ] as const
).map(([substance, seen]) => [
  evaporationCooling(blendOf([{ substance, volumeShare: 1 }]), USUAL_LAMBDA, 1),
  seen,
]);
/** kg/mol of air, and of a fuel of which only its figures are known. */
const AIR = 28.962e-3;
const USUAL_MOLAR_MASS = 105e-3;

/** What a fuel does that goes in before the manifold. */
export interface BeforeManifold {
  /** K by which it cools the charge before the manifold's probe */
  cooling: number;
  /** Share of the manifold's pressure that is its vapour */
  vapour: number;
}

/** What a carburettor's fuel does to the charge before the manifold: common practice, no source. */
export function beforeManifold(fuel: Fuel): BeforeManifold {
  const whole = evaporationCooling(fuel, USUAL_LAMBDA, 1);
  const cooling = seenOf(whole);
  return { cooling, vapour: vapourShare(fuel, USUAL_LAMBDA, Math.min(1, cooling / whole)) };
}

/** Share of the pressure of a mixture that is fuel vapour, once a share of the fuel has evaporated. */
export function vapourShare(fuel: Fuel, lambda: number, share: number): number {
  const ofAir = (share * AIR) / (lambda * fuel.stoichiometricAirFuelRatio * molarMassOfFuel(fuel));
  return ofAir / (1 + ofAir);
}

/** kg/mol, mean by moles. */
function molarMassOfFuel({ parts }: Fuel): number {
  let mass = 0;
  let moles = 0;
  for (const { substance, volumeShare } of parts) {
    const { density, meanMolarMass, ...atoms } = SUBSTANCES[substance];
    mass += volumeShare * density;
    moles += (volumeShare * density) / (meanMolarMass ?? molarMassOf(atoms));
  }
  return moles > 0 ? mass / moles : USUAL_MOLAR_MASS;
}

/** Straight from nothing to the first fuel, between those that are told, and on beyond the last. */
function seenOf(whole: number): number {
  let [low, high] = [[0, 0] as readonly [number, number], COOLED[0]!];
  for (const next of COOLED.slice(1)) if (whole > high[0]) [low, high] = [high, next];
  return low[1] + ((high[1] - low[1]) * (whole - low[0])) / (high[0] - low[0]);
}
