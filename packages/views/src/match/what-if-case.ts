import {
  type FlowLoss,
  type MatchCase,
  type MatchInput,
  NO_LOSS,
  withFuelBehind,
  withOtherFuel,
} from '@pullbook/core/airpath';
import { atAnotherRatio } from '@pullbook/core/fit';
import { isSameFuel, usualLambda } from '@pullbook/core/fuel';
import { type Remark, remark, said } from '@pullbook/core/remark';
import type { MatchBundle, MatchedCombination, WhatIf } from '../match-model.ts';

/**
 * A combination of the bundle as it would be with what is tried: only what is named in the what-if changes. What the fit found and
 * what is uncertain stay those of the original, so that the difference of the two has its own, smaller band; another ratio opens it a little. It was never
 * measured. `null`: nothing is tried, or the bundle has no such combination.
 *
 * A pulley changes the ratio by its share of the one it stands in for; where that one's size is not known, both must be given.
 *
 * @example whatIfCase(bundle, { key: 'A', blowerPulleyDiameter: 0.080 })?.input.drive.pulleyRatio
 */
export function whatIfCase(bundle: MatchBundle, whatIf: WhatIf): MatchedCombination | null {
  const original = bundle.combinations.find(({ key }) => key === whatIf.key);
  const isNothing = Object.keys(whatIf).every((name) => name === 'key');
  if (!original || isNothing) return null;
  const { match, because } = onFuelTried(matchTried(onFuelBehind(original), whatIf), original, whatIf);
  const isNewCooler = typeof whatIf.cooler === 'object' && original.input.cooler === null;
  return {
    ...original,
    key: triedKey(whatIf.key),
    name: 'as tried',
    combination: 1 + Math.max(...bundle.combinations.map(({ combination }) => combination)),
    ...match,
    supply: { ...original.supply, fuel: whatIf.fuel ?? original.supply.fuel },
    fit: null,
    measured: null,
    assumptions: [
      ...original.assumptions,
      ...because,
      ...(isNewCooler
        ? [
            remark(
              'note',
              'tried-cooler-without-loss',
              said`The cooler that is tried is reckoned without a loss of pressure: a real one takes some of the boost.`,
            ),
          ]
        : []),
    ],
  };
}

/** Another ratio is further from the fitted pulls, for a what-if as for a pulley that is added. */
function matchTried({ input, spread, fit }: MatchedCombination, whatIf: WhatIf): MatchCase {
  const tried = { input: inputTried(input, whatIf), spread };
  const ratioOf = ({ drive }: MatchInput) => drive.pulleyRatio * drive.stepUp;
  return fit === null || ratioOf(tried.input) === ratioOf(input) ? tried : atAnotherRatio(tried, fit);
}

/** Before anything is tried: what another fuel than the baseline's does is worked out anew at the charge that is tried. */
function onFuelBehind(original: MatchedCombination): MatchedCombination {
  const { supply, input, spread } = original;
  if (isSameFuel(supply.behind, supply.fuel)) return original;
  return { ...original, ...withFuelBehind({ input, spread }, { before: supply.behind, after: supply.fuel }) };
}

/** Last of all, since what a fuel allows goes by the charge. What is stated of its cooling stands. */
function onFuelTried(
  tried: MatchCase,
  { supply, fit }: MatchedCombination,
  { fuel: after = supply.fuel, evaporationCooling }: WhatIf,
): { match: MatchCase; because: Remark[] } {
  const { behind: before, mixes } = supply;
  const lambda = usualLambda(after, 'centrifugal').usual;
  const isFitted = fit?.ground.fuel !== undefined && isSameFuel(fit.ground.fuel, after);
  const { match, effect } = withOtherFuel(tried, { before, after, lambda, mixes, isFitted });
  if (evaporationCooling === undefined) return { match, because: effect.because };
  const { input } = match;
  return {
    match: { ...match, input: { ...input, charge: { ...input.charge, evaporationCooling } } },
    because: effect.because,
  };
}

/** `A′` */
export const triedKey = (key: string): string => `${key}′`;

function inputTried(input: MatchInput, whatIf: WhatIf): MatchInput {
  const { air = input.air, evaporationCooling = input.charge.evaporationCooling, workFactor = 1 } = whatIf;
  return {
    ...input,
    air,
    drive: driveTried(input.drive, whatIf),
    cooler: coolerTried(input.cooler, whatIf.cooler),
    charge: { ...input.charge, evaporationCooling },
    swallowing: { ...input.swallowing, breathing: breathingTried(input, whatIf.breathing) },
    work: { ...input.work, factor: input.work.factor * workFactor },
  };
}

function driveTried(drive: MatchInput['drive'], whatIf: WhatIf): MatchInput['drive'] {
  const crank = whatIf.crankPulleyDiameter ?? drive.crankPulleyDiameter;
  const blower = whatIf.blowerPulleyDiameter ?? drive.blowerPulleyDiameter;
  const share = (tried: number | undefined, before: number | null) =>
    tried === undefined ? 1 : before === null ? Number.NaN : tried / before;
  const ratioByShares =
    (drive.pulleyRatio * share(whatIf.crankPulleyDiameter, drive.crankPulleyDiameter)) /
    share(whatIf.blowerPulleyDiameter, drive.blowerPulleyDiameter);
  const areBothKnown = crank !== null && blower !== null;
  const fallback = areBothKnown ? crank / blower : drive.pulleyRatio;
  return {
    ...drive,
    crankPulleyDiameter: crank,
    blowerPulleyDiameter: blower,
    pulleyRatio: Number.isFinite(ratioByShares) ? ratioByShares : fallback,
    stepUp: whatIf.stepUp ?? drive.stepUp,
  };
}

function coolerTried(cooler: MatchInput['cooler'], tried: WhatIf['cooler']): MatchInput['cooler'] {
  if (tried === undefined || tried === 'as it is') return cooler;
  if (tried === 'none') return null;
  const loss: FlowLoss = cooler?.loss ?? NO_LOSS;
  return { by: cooler?.by ?? 'air', loss, ...tried };
}

function breathingTried(
  { baseline, swallowing }: MatchInput,
  tried: WhatIf['breathing'],
): MatchInput['swallowing']['breathing'] {
  if (tried === undefined) return swallowing.breathing;
  const { fromRpm, toRpm, share } = tried;
  return baseline.engineSpeedRpm.map((rpm, node) => {
    const before = swallowing.breathing?.[node] ?? 1;
    return rpm >= fromRpm && rpm <= toRpm ? before * (1 + share) : before;
  });
}
