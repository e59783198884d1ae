import { interpolateLinear } from '../numeric/interpolate.ts';
import { median } from '../numeric/median.ts';
import { speedFigure, speedRange } from '../quantity/index.ts';
import { accepted, type Remark, type Result, refused, remark, said } from '../remark/index.ts';
import type { PullArray } from './model.ts';

/** Pulls on the nodes of one window. */
export interface ArraysOnNodes {
  /** Nodes of the window, r/min. */
  engineSpeedRpm: Float64Array;
  /** Indices of the nodes at which every pull has a figure. */
  full: number[];
  /** ln of power of each pull at the nodes; NaN for all where one has none. */
  logPower: Float64Array[];
  /** ln of each pull's mean power over the full nodes. */
  logMean: Float64Array;
}

/**
 * Pulls brought to the nodes they share: the rows of the pull with the widest steps, straight lines between the rows of the
 * others, from the first to the last speed at which every pull has a figure. A hole of one is left out for all. Power that is
 * not above zero is no figure. Refused, in words, where nothing is shared.
 *
 * @example two pulls at 3,000-6,000 and 3,500-6,500 r/min share 3,500-6,000 r/min
 */
export function windowOfArrays(
  pulls: readonly PullArray[],
  asked: readonly [low: number, high: number] | null,
): Result<ArraysOnNodes> {
  const trouble = troubleIn(pulls);
  if (trouble !== null) return refused(trouble);
  const nodes = commonNodes(pulls);
  const power = pulls.map((pull) => powerAt(pull, nodes));
  const isFull = Array.from(nodes, (_, node) => power.every((values) => isFigure(values[node]!)));
  const [first, last] = [isFull.indexOf(true), isFull.lastIndexOf(true)];
  if (first < 0)
    return refused(
      remark(
        'refusal',
        'no-shared-speed',
        said`The pulls share no engine speed at which all have a figure of power, so there is nothing to compare. Choose pulls that overlap.`,
      ),
    );
  const inside = Array.from(nodes.keys()).filter(
    (node) =>
      node >= first &&
      node <= last &&
      (asked === null || (nodes[node]! >= asked[0] && nodes[node]! <= asked[1])),
  );
  // An end of the asked window inside somebody's hole is no end.
  const fullInside = inside.filter((node) => isFull[node]);
  if (fullInside.length === 0)
    return refused(
      remark(
        'refusal',
        'window-missed',
        said`The window asked for, ${speedRange(asked![0], asked![1])}, has no speed at which all pulls have a figure; they share ${speedRange(nodes[first]!, nodes[last]!)}. Ask for a window in that.`,
      ),
    );
  const [from, to] = [fullInside[0]!, fullInside.at(-1)!];
  const full = fullInside.map((node) => node - from);
  return accepted({
    engineSpeedRpm: nodes.slice(from, to + 1),
    full,
    logPower: power.map((values) => {
      const log = new Float64Array(to - from + 1).fill(Number.NaN);
      for (const node of full) log[node] = Math.log(values[from + node]!);
      return log;
    }),
    logMean: Float64Array.from(power, (values) =>
      Math.log(full.reduce((sum, node) => sum + values[from + node]!, 0) / full.length),
    ),
  });
}

const isFigure = (power: number): boolean => power > 0 && power < Number.POSITIVE_INFINITY;

function troubleIn(pulls: readonly PullArray[]): Remark | null {
  if (pulls.length === 0)
    return remark(
      'refusal',
      'no-pulls',
      'There is no pull to compare. Count at least one of each combination.',
    );
  for (const [place, { engineSpeedRpm: speeds, power }] of pulls.entries()) {
    if (speeds.length !== power.length)
      throw new Error(`pull ${place}: ${speeds.length} engine speeds but ${power.length} figures of power`);
    for (let row = 0; row < speeds.length; row++)
      if (!(speeds[row]! > (row === 0 ? Number.NEGATIVE_INFINITY : speeds[row - 1]!)))
        return remark(
          'refusal',
          'speeds-not-rising',
          said`The engine speeds of pull ${place + 1} of the comparison do not rise throughout: row ${row + 1} has ${speedFigure(speeds[row]!)}. Put its rows in rising order of speed, one a speed.`,
        );
  }
  return null;
}

/** The rows of the pull with the widest steps; of several alike the one that begins lowest, so that no order of pulls matters. */
function commonNodes(pulls: readonly PullArray[]): Float64Array {
  const grids = pulls.map((pull) => pull.engineSpeedRpm);
  const first = grids[0]!;
  if (grids.every((grid) => sameNumbers(grid, first))) return Float64Array.from(first);
  const widest = grids
    .map((grid) => ({ grid, step: medianStep(grid) }))
    .reduce((best, other) =>
      other.step > best.step || (other.step === best.step && comesBefore(other.grid, best.grid))
        ? other
        : best,
    );
  return Float64Array.from(widest.grid);
}

const medianStep = (speeds: ArrayLike<number>): number =>
  speeds.length < 2
    ? 0
    : median(Float64Array.from({ length: speeds.length - 1 }, (_, row) => speeds[row + 1]! - speeds[row]!));

const sameNumbers = (one: ArrayLike<number>, other: ArrayLike<number>): boolean =>
  one === other ||
  (one.length === other.length && Array.from(one).every((value, row) => value === other[row]));

function comesBefore(one: ArrayLike<number>, other: ArrayLike<number>): boolean {
  for (let row = 0; row < Math.min(one.length, other.length); row++)
    if (one[row] !== other[row]) return one[row]! < other[row]!;
  return one.length < other.length;
}

function powerAt(pull: PullArray, nodes: Float64Array): Float64Array {
  if (sameNumbers(pull.engineSpeedRpm, nodes)) return Float64Array.from(pull.power);
  return nodes.map((speed) => interpolateLinear(pull.engineSpeedRpm, pull.power, speed));
}
