import { curveBand, figuresOfDraws } from './bands-of-draws.ts';
import { breathingSpread } from './breathing.ts';
import { fuelOfBaseline } from './burning.ts';
import { drawsOfAlone, drawsOfMatch, type RungDraws } from './draws-of-rung.ts';
import { type Judged, judged } from './judged.ts';
import type { ReachInput } from './model.ts';
import { nodesFor } from './nodes.ts';
import { rungCurve } from './rung-curve.ts';
import { type SearchGround, searchGround } from './search-ground.ts';
import { targetFigure } from './target-figure.ts';
import type { LadderRung } from './whole-rung.ts';

/** Nodes that are drawn: bands run smoothly between. */
const DRAWN_NODES = 10;

/**
 * A rung with its bands and its chance, from `input.draws` draws of what is open. Draws go by the seed and by what they are about, so that two rungs
 * share what they have in common, and a rung has the same band wherever it is worked out.
 */
export function bandedRung(input: ReachInput, rung: LadderRung): LadderRung {
  const ground = searchGround(input);
  const one = judged(ground, rung.picked);
  return one === null ? rung : withBands(ground, one, rung);
}

export function withBands<T extends LadderRung>(
  { input }: Pick<SearchGround, 'input'>,
  one: Judged,
  rung: T,
): T {
  const drawn = drawsOf(input, one);
  const { curve, match } = one;
  const { factor } = input.standard;
  const atDrawn = drawn.engineSpeedRpm.map(
    (speed) => curve.figures.brakePower[curve.engineSpeedRpm.indexOf(speed)]!,
  );
  const figures = figuresOfDraws(drawn, targetFigure(input.target, drawn.engineSpeedRpm), {
    power: atDrawn,
    figure: one.figure,
    peak: one.peak.value,
    boost: rung.highestBoost?.value ?? null,
    asked: input.target.power,
    factor,
  });
  const solved = (values: ArrayLike<number>) => ({ engineSpeedRpm: curve.engineSpeedRpm, solved: values });
  const power = curveBand(drawn.power, drawn, solved(curve.figures.brakePower));
  const boost = drawn.boost === null ? null : curveBand(drawn.boost, drawn, solved(curve.figures.boost));
  return {
    ...rung,
    reached: figures.reached,
    peakPower: { ...figures.peak, atRpm: rung.peakPower.atRpm },
    highestBoost:
      rung.highestBoost === null || figures.boost === null
        ? null
        : { ...figures.boost, atRpm: rung.highestBoost.atRpm },
    chance: figures.chance,
    curve: rungCurve(
      curve,
      { factor, supply: one.made.supply, isCharged: match !== null },
      { power, boost: boost ?? power },
    ),
  };
}

/** At nodes up to where the engine is stopped. */
function drawsOf(
  input: ReachInput,
  { made, match, curve, fuelFactor, fuelEffect, picked }: Judged,
): RungDraws {
  const speeds = curve.engineSpeedRpm.length;
  const drawn = { draws: input.draws, seed: input.seed };
  const nodes = nodesFor(made.baseline, input.target, DRAWN_NODES);
  const peaks = [curve.figures.brakePower, curve.figures.boost].map((values) => highestNode(values));
  const within = [...new Set([...nodes.filter((node) => node < speeds), speeds - 1, ...peaks])].sort(
    (a, b) => a - b,
  );
  if (match !== null) return drawsOfMatch(match, within, drawn);
  const factors = made.baseline.engineSpeedRpm.map(
    (_, node) => (made.breathing?.[node] ?? 1) * (fuelFactor?.[node] ?? 1),
  );
  const spreads = [
    ...breathingSpread(input, picked),
    ...(fuelEffect === null
      ? []
      : [
          {
            key: `${made.supply.fuel.name} in place of ${fuelOfBaseline(input).name}`,
            spread: fuelEffect.workSpread,
          },
        ]),
  ];
  return drawsOfAlone(made.baseline, { factors, spreads, nodes: within }, drawn);
}

const highestNode = (values: Float64Array): number =>
  values.reduce(
    (best, value, node) => (value > values[best]! || Number.isNaN(values[best]) ? node : best),
    0,
  );
