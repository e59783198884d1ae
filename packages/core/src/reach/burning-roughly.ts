import { caseAtNodes, type MatchCase, type MatchInput, withOtherFuel } from '../airpath/index.ts';
import { matchAtRatio, nameBeforeDrive } from './made-engine.ts';
import { nodesFor } from './nodes.ts';
import { NOTHING_FOLLOWS, type Picked } from './picked.ts';
import type { SearchGround } from './search-ground.ts';
import { supplyOf } from './supply-of-rung.ts';

/** Ratios at which what a fuel does is worked out lie this share apart. */
const APART = 1.15;
/** Engine speeds at which it is. */
const SPEEDS = 3;

/**
 * A match on another fuel, by what that does at the ratios on either side and at a few speeds: what a fuel allows moves slowly with boost, and is slow to work
 * out. Good to some tenths of a per cent, to find what may serve.
 */
export function burningRoughly(match: MatchCase, ground: SearchGround, picked: Picked): MatchCase {
  const { pulleyRatio, stepUp } = match.input.drive;
  const place = Math.log(pulleyRatio * stepUp) / Math.log(APART);
  const below = effectAt(ground, picked, Math.floor(place));
  const above = effectAt(ground, picked, Math.floor(place) + 1);
  if (below === null || above === null) return match;
  const share = place - Math.floor(place);
  const { engineSpeedRpm } = match.input.baseline;
  const own = match.input.work.fuelFactor;
  const fuelFactor = engineSpeedRpm.map(
    (speed, node) =>
      (own?.[node] ?? 1) * (between(below.work, speed) * (1 - share) + between(above.work, speed) * share),
  );
  const { charge, fuelVapour, evaporationCooling } = below;
  return {
    input: {
      ...match.input,
      baseline: {
        ...match.input.baseline,
        ...(fuelVapour === undefined ? {} : { fuelVapour }),
        ...(evaporationCooling === undefined ? {} : { evaporationCooling }),
      },
      charge: {
        ...match.input.charge,
        evaporationCooling: charge.evaporationCooling,
        fuelVapour: charge.fuelVapour,
      },
      work: { ...match.input.work, fuelFactor },
    },
    spread: match.spread,
  };
}

interface Effect {
  work: { speed: number; factor: number }[];
  charge: MatchInput['charge'];
  fuelVapour: number | undefined;
  evaporationCooling: number | undefined;
}

function effectAt(ground: SearchGround, picked: Picked, step: number): Effect | null {
  return ground.once(`fuel of ${nameBeforeDrive(picked)} at ${step}`, () => {
    const match = matchAtRatio(ground, picked, APART ** step);
    if (match === null) return null;
    const few = caseAtNodes(match, nodesFor(match.input.baseline, ground.input.target, SPEEDS));
    const { fuel: before, mixes } = ground.input.supply;
    const { fuel: after, lambda } = supplyOf(ground.input, picked, NOTHING_FOLLOWS);
    const { input } = withOtherFuel(few, { before, after, lambda, mixes }).match;
    const { baseline, charge, work } = input;
    return {
      work: baseline.engineSpeedRpm.map((speed, node) => ({
        speed,
        factor: (work.fuelFactor?.[node] ?? 1) / (few.input.work.fuelFactor?.[node] ?? 1),
      })),
      charge,
      fuelVapour: baseline.fuelVapour,
      evaporationCooling: baseline.evaporationCooling,
    };
  });
}

/** Straight between speeds, held beyond their ends. */
function between(known: Effect['work'], speed: number): number {
  const above = known.findIndex((one) => one.speed >= speed);
  if (above < 0) return known.at(-1)!.factor;
  const high = known[above]!;
  const low = known[above - 1];
  if (low === undefined || high.speed === low.speed) return high.factor;
  return low.factor + ((high.factor - low.factor) * (speed - low.speed)) / (high.speed - low.speed);
}
