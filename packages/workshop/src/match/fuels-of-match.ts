import { type MatchCase, type OtherFuel, withOtherFuel } from '@pullbook/core/airpath';
import { type CombinationSheet, sheetNumber } from '@pullbook/core/combination';
import { type FitTarget, type MatchFit, withFit } from '@pullbook/core/fit';
import {
  type Fuel,
  type FuelSupply,
  fuelOfSheet,
  fuelSupplyOf,
  inductionOfSheet,
  isFuelTold,
  isSameFuel,
} from '@pullbook/core/fuel';
import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';

/**
 * The fuel of a sheet where it is another than that of the pulls without supercharger. `null`: the same, or one of the two does not say: what nobody
 * said is no difference.
 *
 * @param behind  sheet of those pulls
 */
export function otherFuelOf(sheet: CombinationSheet, behind: CombinationSheet): OtherFuel | null {
  if (!isFuelTold(sheet) || !isFuelTold(behind)) return null;
  const before = fuelOfSheet(behind).fuel;
  const { fuel: after, lambda, mixes } = fuelSupplyOf(sheet, { induction: inductionOfSheet(sheet) });
  const isOctaneTold = [sheet, behind].map((one) =>
    ['researchOctane', 'motorOctane'].some((field) => sheetNumber(one, 'fuel', field) !== null),
  );
  const asTold = isOctaneTold[0] === isOctaneTold[1] ? after : withOctaneOf(after, before);
  return isSameFuel(before, asTold) ? null : { before, after, lambda, mixes };
}

/**
 * The same against a fuel that was stated. Where the sheet does not say what it burns, that is taken for the fuel of both and said.
 */
export function otherFuelThan(before: Fuel, sheet: CombinationSheet): Result<OtherFuel | null> {
  if (!isFuelTold(sheet)) return accepted(null, [fuelNotTold(before)]);
  const { fuel: after, lambda, mixes } = fuelSupplyOf(sheet, { induction: inductionOfSheet(sheet) });
  return accepted(isSameFuel(before, after) ? null : { before, after, lambda, mixes });
}

/** What a combination burns, where fuel meets air, and what the pulls behind it burnt: told or not, no difference. */
export function suppliedBy(
  sheet: CombinationSheet,
  { fuelBehind }: { fuelBehind?: Fuel } = {},
): Pick<FuelSupply, 'fuel' | 'mixes'> & { behind: Fuel } {
  const { fuel, mixes } = fuelSupplyOf(sheet, { induction: inductionOfSheet(sheet) });
  return { fuel, mixes, behind: fuelBehind ?? fuel };
}

const fuelNotTold = ({ name }: Fuel): Remark =>
  remark(
    'caution',
    'fuel-not-told',
    `The baseline is said to be on ${name}, and the combination does not say what it burns: the same is taken. Name it under fuel, name.`,
  );

const withOctaneOf = (fuel: Fuel, { researchOctane, motorOctane }: Fuel): Fuel => ({
  ...fuel,
  researchOctane,
  motorOctane,
});

/** A match adapted by a fit and then put on its own fuel, with what that does in a sentence each. */
export function adapted(
  ready: MatchCase,
  fit: MatchFit | null,
  other: OtherFuel | null,
): { match: MatchCase; remarks: Remark[] } {
  const fitted = fit === null ? ready : withFit(ready, fit);
  if (other === null) return { match: fitted, remarks: [] };
  const isFitted = isFittedOn(fit, other);
  const { match, effect } = withOtherFuel(fitted, { ...other, isFitted });
  return { match, remarks: [anotherFuel(other, isFitted), ...effect.because] };
}

/** Whether a fit's pulls were made on the fuel itself. */
const isFittedOn = (fit: MatchFit | null, { after }: OtherFuel): boolean =>
  fit?.ground.fuel !== undefined && isSameFuel(fit.ground.fuel, after);

/** Boosted pulls on another fuel than the baseline: by combination, `null` where it is the same. */
export interface TargetsOfOne {
  targets: FitTarget[];
  other: OtherFuel | null;
}

/**
 * Fits combinations of which some burn another fuel than the pulls without supercharger: the fuel's effect comes first, so that the fit sees what is
 * left. It goes by the charge, which a first fit tells; the second is made with the effect at that charge.
 */
export async function fittedOnTheirFuels(
  combinations: readonly TargetsOfOne[],
  fit: (targets: FitTarget[][]) => Promise<Result<MatchFit[]>>,
): Promise<Result<MatchFit[]>> {
  const plain = combinations.map(({ targets }) => targets);
  if (combinations.every(({ other }) => other === null)) return fit(plain);
  const first = await fit(combinations.map((one) => one.targets.map((target) => onFuel(target, one, null))));
  if (!first.ok) return first;
  return fit(
    combinations.map((one, place) => one.targets.map((target) => onFuel(target, one, first.value[place]!))),
  );
}

/** A target with its fuel's effect in it, and what that leaves open for the fit to find. */
function onFuel(target: FitTarget, { other }: TargetsOfOne, known: MatchFit | null): FitTarget {
  if (other === null) return target;
  const { input, spread } = withOtherFuel(known === null ? target : withFit(target, known), other).match;
  const { staysBesideFit: _, ...open } = spread.at(-1)!;
  return {
    ...target,
    input: {
      ...target.input,
      baseline: input.baseline,
      charge: { ...input.charge, heatFactor: target.input.charge.heatFactor },
      work: { ...target.input.work, fuelFactor: input.work.fuelFactor ?? null },
    },
    spread: [...target.spread, open],
    fuel: other.after,
  };
}

const anotherFuel = ({ before, after }: OtherFuel, isFitted: boolean): Remark =>
  remark(
    isFitted ? 'note' : 'caution',
    'another-fuel',
    isFitted
      ? `The pulls without supercharger were made on ${before.name}, the boosted ones on ${after.name}: what the fuel does by rule is taken out first, and the fit found what was left.`
      : `The pulls behind this were made on ${before.name} and it burns ${after.name}: what that changes is a rule of thumb. One pull on it tells.`,
  );
