import {
  effectFigures,
  type Fuel,
  type FuelEffect,
  type FuelSupply,
  fuelEffect,
  isSameFuel,
  moreBeforeManifold,
  NO_EFFECT,
} from '../../fuel/index.ts';
import type { MatchCase, MatchCurve, MatchInput } from '../model.ts';
import { chargeAtLoad } from './charge-at-load.ts';
import { solveMatch } from './solve-match.ts';

export interface OtherFuel {
  /** On which the pulls behind the match were made. */
  before: Fuel;
  after: Fuel;
  /** At full load, of either: what is burnt is air. */
  lambda: number;
  mixes: FuelSupply['mixes'];
  /** Of the draws of what the effect leaves open; missing: the two fuels by their names. */
  key?: string;
  /** Of a match fitted to pulls on the fuel after: what the effect left open they have told. */
  isFitted?: boolean;
}

/** Engine speeds at which the effect is worked out; between them it is straight. */
const MOST_SPEEDS = 8;

/**
 * A match with another fuel than that of the pulls behind it: the last step of making one, after fit, pulley and cooler, since what a fuel allows goes by
 * the charge. The charge is solved once at each engine speed; the effect multiplies the work of the air there, and of a carburettor cools the charge
 * and takes room. The same fuel leaves the match as it is, the very object.
 *
 * @example withOtherFuel(withFit(ready, fit), { before: pump98, after: e85, lambda: 0.8, mixes: 'port' }).effect.work // 1.03, at highest power
 */
export function withOtherFuel(match: MatchCase, other: OtherFuel): { match: MatchCase; effect: FuelEffect } {
  const { before, after, mixes, isFitted = false, key = keyOfEffect(other) } = other;
  if (isSameFuel(before, after)) return { match, effect: NO_EFFECT };
  const { input } = match;
  const curve = solveMatch(input);
  const nodes = solvedNodes(curve);
  const top = highestOf(curve, nodes);
  if (top === null) return { match, effect: NO_EFFECT };
  const chargeAt = (node: number) => chargeAtLoad(input, curve, node, other.lambda);
  const effect = fuelEffect(before, after, chargeAt(top), mixes);
  const looked = spreadOver(nodes).map((node) => ({
    speed: curve.engineSpeedRpm[node]!,
    work: effectFigures({ before, after, charge: chargeAt(node), mixes, ends: false }).work,
  }));
  const fuelFactor = curve.engineSpeedRpm.map(
    (speed, node) => (input.work.fuelFactor?.[node] ?? 1) * between(looked, speed),
  );
  return {
    match: {
      input: { ...withFuelInManifold(input, other), work: { ...input.work, fuelFactor } },
      spread: isFitted
        ? match.spread
        : [...match.spread, { key, parts: ['work'], factor: [[effect.workSpread]], staysBesideFit: true }],
    },
    effect,
  };
}

/** By what the draws of an effect are known. */
const keyOfEffect = ({ before, after }: Pick<OtherFuel, 'before' | 'after'>): string =>
  `${after.name} in place of ${before.name}`;

/**
 * The same match on the fuel of its baseline again, so that something else can be changed on it before the fuel is.
 *
 * @example withFuelBehind(withOtherFuel(match, other).match, other) // match, with what of the charge is the baseline's said
 */
export function withFuelBehind(
  { input, spread }: MatchCase,
  other: Pick<OtherFuel, 'before' | 'after'>,
): MatchCase {
  const { baseline, charge, work } = input;
  return {
    input: {
      ...input,
      charge: {
        ...charge,
        evaporationCooling: baseline.evaporationCooling ?? charge.evaporationCooling,
        fuelVapour: baseline.fuelVapour ?? charge.fuelVapour,
      },
      work: { ...work, fuelFactor: null },
    },
    spread: spread.filter(({ key }) => key !== keyOfEffect(other)),
  };
}

/** Charge and baseline with the fuel that goes in before the manifold; the baseline keeps what it was pulled on. */
function withFuelInManifold(input: MatchInput, { before, after, mixes }: OtherFuel): MatchInput {
  const { charge, baseline } = input;
  const more = moreBeforeManifold(before, after, mixes);
  if (more.evaporationCooling === 0 && more.fuelVapour === 0) return input;
  return {
    ...input,
    baseline: {
      ...baseline,
      fuelVapour: baseline.fuelVapour ?? charge.fuelVapour,
      evaporationCooling: baseline.evaporationCooling ?? charge.evaporationCooling,
    },
    charge: {
      ...charge,
      evaporationCooling: Math.max(0, charge.evaporationCooling + more.evaporationCooling),
      fuelVapour: Math.max(0, charge.fuelVapour + more.fuelVapour),
    },
  };
}

const solvedNodes = ({ state }: MatchCurve): number[] =>
  state.flatMap((one, node) => (one === 'no solution' ? [] : [node]));

function highestOf({ figures: { brakePower } }: MatchCurve, nodes: readonly number[]): number | null {
  let top: number | null = null;
  for (const node of nodes) if (top === null || brakePower[node]! > brakePower[top]!) top = node;
  return top;
}

/** At most so many of the nodes, both ends among them. */
function spreadOver(nodes: readonly number[]): number[] {
  if (nodes.length <= MOST_SPEEDS) return [...nodes];
  return Array.from(
    { length: MOST_SPEEDS },
    (_, place) => nodes[Math.round((place * (nodes.length - 1)) / (MOST_SPEEDS - 1))]!,
  );
}

/** Straight between the speeds looked at, held beyond their ends. */
function between(looked: readonly { speed: number; work: number }[], speed: number): number {
  const above = looked.findIndex((one) => one.speed >= speed);
  if (above < 0) return looked.at(-1)!.work;
  const [low, high] = [looked[above - 1] ?? looked[above]!, looked[above]!];
  if (high.speed === low.speed) return high.work;
  return low.work + ((high.work - low.work) * (speed - low.speed)) / (high.speed - low.speed);
}
