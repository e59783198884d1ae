import { columnsOf, type Design } from './design-of-pulls.ts';
import type { ScatterComparison, ScatterHistory, Spread, SpreadUsed } from './model.ts';
import { moderate } from './moderate.ts';
import { addColumns, dot, without } from './orthonormal-columns.ts';
import type { ArraysOnNodes } from './window-of-arrays.ts';

export interface SpreadsAtHand {
  spreads: ScatterComparison['spreads'];
  /** Sum of squares of the pulls about what they share, and its degrees of freedom: for whoever takes more out of it. */
  residual: { squares: number; degreesOfFreedom: number };
}

/**
 * Every spread of a comparison, history and repeats put together. Pulls scatter about their unit (one combination in one
 * set-up on one day), after the drift that is taken out; set-ups about their combination and day; days about their
 * combination. Each by the mean square of the directions that only it can move (Henderson's method of moments), less what the
 * finer spreads and a drift that is carried put into it.
 */
export function spreadsAtHand(design: Design, on: ArraysOnNodes, history: ScatterHistory): SpreadsAtHand {
  const basis: Float64Array[] = [];
  addColumns(basis, columnsOf(design.groups));
  addColumns(basis, columnsOf(design.cells));
  addColumns(basis, design.takenOut);
  const log = centred(on.logMean);
  const dayDirections = addColumns(basis, columnsOf(design.sessions));
  const setUpDirections = addColumns(basis, columnsOf(design.setUps));
  addColumns(basis, columnsOf(design.units));
  const rest = without(log, basis);
  const residual = { squares: dot(rest, rest), degreesOfFreedom: log.length - basis.length };
  const pull = moderate(history.pull, spreadOf(residual.squares, residual.degreesOfFreedom));

  const setUpColumns = columnsOf(design.setUps);
  const drift = (directions: Float64Array[]) =>
    shareIn(directions, design.carried) * history.driftPerHour.sigma ** 2;
  const setUp = between(history.setUp, {
    directions: setUpDirections,
    log,
    share: shareIn(setUpDirections, setUpColumns),
    finer: pull.sigma ** 2 + drift(setUpDirections),
  });
  const day = between(history.day, {
    directions: dayDirections,
    log,
    share: shareIn(dayDirections, columnsOf(design.sessions)),
    finer: pull.sigma ** 2 + drift(dayDirections) + shareIn(dayDirections, setUpColumns) * setUp.sigma ** 2,
  });
  return {
    residual,
    spreads: {
      pull,
      setUp,
      day,
      cell: moderate(history.cell, null),
      within: {
        ...moderate(history.within, within(design, on, history)),
        lengthRpm: history.within.lengthRpm,
      },
    },
  };
}

/** A spread from its squares; `null` where there is nothing to know it by. */
export const spreadOf = (squares: number, degreesOfFreedom: number) =>
  degreesOfFreedom > 0 ? { sigma: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom } : null;

/** About one middle, so that the logarithm of watts does not eat digits of the scatter. */
function centred(values: Float64Array): Float64Array {
  const middle = values.reduce((sum, value) => sum + value, 0) / values.length;
  return values.map((value) => value - middle);
}

/** Mean share of a level's variance in the squares along the directions. */
function shareIn(directions: readonly Float64Array[], levels: readonly Float64Array[]): number {
  if (directions.length === 0) return 0;
  const sum = directions.reduce(
    (total, direction) => total + levels.reduce((squares, level) => squares + dot(direction, level) ** 2, 0),
    0,
  );
  return sum / directions.length;
}

/**
 * A spread between set-ups or days. What is seen has finer scatter in it, which is known and taken off; a mean square of which
 * the spread itself makes the share q tells as much of it as one with q² of its degrees of freedom (Satterthwaite 1946). What
 * is seen as a whole sets history aside, by that share. A spread that history states as none stays none.
 */
function between(
  history: Spread,
  {
    directions,
    log,
    share,
    finer,
  }: { directions: readonly Float64Array[]; log: Float64Array; share: number; finer: number },
): SpreadUsed {
  if (history.sigma === 0 || directions.length === 0 || share === 0) return moderate(history, null);
  const squares = directions.reduce((sum, direction) => sum + dot(direction, log) ** 2, 0);
  const noise = finer / share;
  const seen = squares / directions.length / share;
  const known = history.sigma ** 2;
  const whole = moderate(
    { ...history, sigma: Math.sqrt(known + noise) },
    { sigma: Math.sqrt(seen), degreesOfFreedom: directions.length },
  );
  const beyondNoise = (variance: number) => Math.sqrt(Math.max(0, variance));
  const fromRepeats = { sigma: beyondNoise(seen - noise), degreesOfFreedom: directions.length };
  const own = known / (known + noise);
  const told = directions.length * own ** 2;
  const together = history.degreesOfFreedom + told;
  if (whole.historySetAside) {
    // Only as far as what was seen is of this spread: finer scatter alone contradicts nothing.
    const variance = known + own * (seen - noise - known);
    const degreesOfFreedom = own * whole.degreesOfFreedom + (1 - own) * together;
    return { ...whole, sigma: beyondNoise(variance), degreesOfFreedom, fromRepeats };
  }
  if (together === Number.POSITIVE_INFINITY) return { ...whole, sigma: history.sigma, fromRepeats };
  const variance = (history.degreesOfFreedom * known + told * (seen - noise)) / together;
  return { ...whole, sigma: beyondNoise(variance), degreesOfFreedom: together, fromRepeats };
}

/** Each speed against its pull's own average, about the mean of these deviations in its group. */
function within(
  { groups }: Design,
  { engineSpeedRpm, full, logPower }: ArraysOnNodes,
  history: ScatterHistory,
): { sigma: number; degreesOfFreedom: number } | null {
  const spare = logPower.length - groups.names.length;
  if (spare <= 0 || full.length < 2) return null;
  let squares = 0;
  for (const level of groups.names.keys()) {
    const own = logPower.filter((_, pull) => groups.of[pull] === level);
    const averages = own.map((values) => full.reduce((sum, node) => sum + values[node]!, 0) / full.length);
    for (const node of full) {
      let middle = 0;
      for (const [place, values] of own.entries()) middle += (values[node]! - averages[place]!) / own.length;
      for (const [place, values] of own.entries())
        squares += (values[node]! - averages[place]! - middle) ** 2;
    }
  }
  const effective = effectiveNodes(engineSpeedRpm, full, history.within.lengthRpm);
  return { sigma: Math.sqrt(squares / (spare * full.length)), degreesOfFreedom: spare * effective };
}

/** How many independent figures correlated nodes are worth: (tr R)² / tr R². */
function effectiveNodes(speeds: Float64Array, full: readonly number[], lengthRpm: number): number {
  if (!(lengthRpm > 0)) return full.length;
  let sum = full.length;
  for (let one = 0; one < full.length; one++)
    for (let other = 0; other < one; other++)
      sum += 2 * Math.exp((-2 * (speeds[full[one]!]! - speeds[full[other]!]!)) / lengthRpm);
  return full.length ** 2 / sum;
}
