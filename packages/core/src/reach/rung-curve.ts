import type { MATCH_FIGURES, MatchCurve } from '../airpath/index.ts';
import { type FuelSupply, fuelFlowOfAir } from '../fuel/index.ts';
import type { RungCurve } from './model.ts';

/** A share of the value at each node, or what is added to it: how far a band reaches. */
export interface CurveBand {
  low: readonly number[];
  high: readonly number[];
}

/** No band yet. */
const NONE = (curve: MatchCurve): CurveBand => {
  const nothing = curve.engineSpeedRpm.map(() => 0);
  return { low: nothing, high: nothing };
};

/**
 * What a picture of a rung draws, at the speeds that have a solution. Powers in the target's standard.
 *
 * @param bands what lies below and above power (W as observed) and boost (Pa) at each node; missing: none yet
 */
export function rungCurve(
  curve: MatchCurve,
  { factor, supply, isCharged }: { factor: number; supply: FuelSupply; isCharged: boolean },
  bands: { power: CurveBand; boost: CurveBand } = { power: NONE(curve), boost: NONE(curve) },
): RungCurve {
  const { figures } = curve;
  const nodes = curve.engineSpeedRpm.flatMap((_, node) => (isWhole(curve, node, isCharged) ? [node] : []));
  const of = (values: ArrayLike<number>): number[] => nodes.map((node) => values[node]!);
  const banded = (values: ArrayLike<number>, { low, high }: CurveBand, scale: number) => ({
    value: nodes.map((node) => values[node]! * scale),
    low: nodes.map((node) => (values[node]! - low[node]!) * scale),
    high: nodes.map((node) => (values[node]! + high[node]!) * scale),
  });
  return {
    engineSpeedRpm: of(curve.engineSpeedRpm),
    power: banded(figures.brakePower, bands.power, factor),
    boost: isCharged ? banded(figures.boost, bands.boost, 1) : null,
    map: isCharged
      ? {
          correctedFlow: of(figures.correctedFlow),
          pressureRatio: of(figures.pressureRatio),
          state: nodes.map((node) => curve.state[node]!),
        }
      : null,
    airFlow: of(figures.airFlow),
    fuelFlow: nodes.map((node) => fuelFlowOfAir(figures.airFlow[node]!, supply.lambda, supply.fuel)),
    impellerSpeedRpm: isCharged ? of(figures.impellerSpeedRpm) : null,
  };
}

/** Figures that a picture needs of each node. */
const DRAWN = ['brakePower', 'airFlow'] as const satisfies readonly (typeof MATCH_FIGURES)[number][];
const DRAWN_OF_CHARGED = ['boost', 'pressureRatio', 'impellerSpeedRpm', 'correctedFlow'] as const;

const isWhole = ({ figures }: MatchCurve, node: number, isCharged: boolean): boolean =>
  [...DRAWN, ...(isCharged ? DRAWN_OF_CHARGED : [])].every((figure) =>
    Number.isFinite(figures[figure][node]),
  );
