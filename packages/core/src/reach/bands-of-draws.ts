import { interpolateLinear, selectQuantile } from '../numeric/index.ts';
import type { RungDraws } from './draws-of-rung.ts';
import type { Banded } from './model.ts';
import type { CurveBand } from './rung-curve.ts';
import type { TargetFigure } from './target-figure.ts';

/** 95 of 100 draws lie between. */
const LOW = 0.025;
const HIGH = 0.975;

/** What draws say of a target. */
export interface FiguresOfDraws {
  /** Beside the figure as solved, in its unit. */
  reached: Banded;
  peak: Banded;
  /** `null`: no supercharger */
  boost: Banded | null;
  /** Share of the draws that reach the power asked for; one without a solution does not. */
  chance: number;
}

/**
 * Figure, peak and chance draw by draw. They are read off the few nodes that were drawn; by what the figure as solved reads otherwise off these than off
 * all nodes, those of the draws are carried.
 */
export function figuresOfDraws(
  { power, boost, draws, engineSpeedRpm }: RungDraws,
  { of }: TargetFigure,
  solved: {
    power: ArrayLike<number>;
    figure: number;
    peak: number;
    boost: number | null;
    asked: number;
    factor: number;
  },
): FiguresOfDraws {
  const nodes = engineSpeedRpm.length;
  const row = new Float64Array(nodes);
  const figures = new Float64Array(draws);
  const peaks = new Float64Array(draws);
  const boosts = new Float64Array(draws);
  const read = of(solved.power) * solved.factor;
  const carried = read > 0 ? solved.figure / read : 1;
  let reached = 0;
  for (let draw = 0; draw < draws; draw++) {
    let highest = Number.NEGATIVE_INFINITY;
    let pressed = Number.NEGATIVE_INFINITY;
    for (let node = 0; node < nodes; node++) {
      const value = power[node * draws + draw]! * solved.factor;
      row[node] = value;
      if (value > highest) highest = value;
      const gauge = boost === null ? Number.NaN : boost[node * draws + draw]!;
      if (gauge > pressed) pressed = gauge;
    }
    figures[draw] = of(row) * carried;
    peaks[draw] = highest;
    boosts[draw] = pressed;
    if (figures[draw]! >= solved.asked) reached++;
  }
  return {
    reached: bandAbout(solved.figure, figures),
    peak: bandAbout(solved.peak, peaks),
    boost: solved.boost === null ? null : bandAbout(solved.boost, boosts),
    chance: reached / draws,
  };
}

/** The band of draws about what was solved, which it always holds: few nodes may read a peak a little lower than all do. */
function bandAbout(value: number, drawn: Float64Array): Banded {
  const solved = drawn.filter(Number.isFinite);
  if (solved.length === 0) return { value, low: value, high: value };
  return {
    value,
    low: Math.min(value, selectQuantile(solved, LOW)),
    high: Math.max(value, selectQuantile(solved, HIGH)),
  };
}

/** How far below and above the value as solved draws of one figure lie, at all speeds: straight between the drawn ones. */
export function curveBand(
  values: Float32Array,
  { draws, engineSpeedRpm }: RungDraws,
  at: { engineSpeedRpm: readonly number[]; solved: ArrayLike<number> },
): CurveBand {
  const below: number[] = [];
  const above: number[] = [];
  for (const [node, speed] of engineSpeedRpm.entries()) {
    const drawn = values.slice(node * draws, (node + 1) * draws).filter(Number.isFinite);
    const value = at.solved[at.engineSpeedRpm.indexOf(speed)]!;
    const isKnown = drawn.length > 0 && Number.isFinite(value);
    below.push(isKnown ? Math.max(0, value - selectQuantile(drawn, LOW)) : 0);
    above.push(isKnown ? Math.max(0, selectQuantile(drawn, HIGH) - value) : 0);
  }
  const over = (ends: number[]): number[] =>
    at.engineSpeedRpm.map((speed) => interpolateLinear(engineSpeedRpm, ends, speed));
  return { low: over(below), high: over(above) };
}
