import type { FittedMap, SpeedLine } from '../model.ts';
import { efficiencyOn, pressureRatioOn, speedLineAt } from './speed-line.ts';

/** A line through the map, for a picture. */
export interface MapPath {
  /** kg/s, corrected */
  flow: number[];
  pressureRatio: number[];
}

/** Speeds looked at between the lowest and the highest. */
const SPEEDS = 48;

/**
 * Where the efficiency has one level: lines in (corrected flow, pressure ratio) between surge and choke, over the measured speeds. Closed where the
 * better region is an island; open where it meets the surge edge or the last speed. None where the level is not reached.
 *
 * @example equalEfficiency(map, 0.72) // [{ flow: [0.31, …], pressureRatio: [1.6, …] }]
 */
export function equalEfficiency(map: FittedMap, level: number): MapPath[] {
  const [low, high] = map.measuredSpeedRpm ?? speedsOfGeneric(map);
  const at = (speedRpm: number): Sides => {
    const line = speedLineAt(map, speedRpm);
    return { line, ...sidesOf(line, level) };
  };
  const sides = Array.from({ length: SPEEDS + 1 }, (_, step) => at(low + ((high - low) * step) / SPEEDS));
  return runsReached(sides).flatMap((run) => pathsOf(withRoundEnds(run, sides, at), sides.length));
}

/** How far from the last speed that still has the level to the next one looked at: squares, since an end is as round as a parabola. */
const END_SHARES = [0, 1 / 16, 1 / 4, 9 / 16] as const;

/** A run whose closed ends go on to the very speed at which the level is just reached: a straight cut is no end of an island. */
function withRoundEnds(run: Run, sides: readonly Sides[], at: (speedRpm: number) => Sides): Run {
  const endTo = (reached: Sides, missed: Sides | undefined): Sides[] => {
    if (missed === undefined) return [];
    let [inside, outside] = [reached.line.speedRpm, missed.line.speedRpm];
    for (let halving = 0; halving < 12; halving++) {
      const middle = (inside + outside) / 2;
      if (at(middle).right === null) outside = middle;
      else inside = middle;
    }
    return END_SHARES.map((share) => at(inside + share * (reached.line.speedRpm - inside)));
  };
  const below = endTo(run.sides[0]!, sides[run.first - 1]);
  const above = endTo(run.sides.at(-1)!, sides[run.first + run.count]);
  return {
    first: run.first,
    count: run.count,
    sides: [...below, ...run.sides, ...above.toReversed()].filter(({ right }) => right !== null),
  };
}

interface Sides {
  line: SpeedLine;
  left: number | null;
  right: number | null;
}

interface Run {
  /** Place of its first among all speeds, and how many of those it has. */
  first: number;
  count: number;
  sides: Sides[];
}

/** 40 to 120 % of the design speed. */
function speedsOfGeneric({ shape }: FittedMap): [number, number] {
  const design = shape.numbers.designMach![0]! / shape.numbers.machPerRpm![0]!;
  return [0.4 * design, 1.2 * design];
}

/** Flows left and right of the best at which a line has the level; left `null` where it has it already at surge. */
function sidesOf(line: SpeedLine, level: number): { left: number | null; right: number | null } {
  const STEPS = 40;
  const { surgeFlow, chokeFlow } = line;
  let best = surgeFlow;
  let most = efficiencyOn(line, surgeFlow);
  const atSurge = most;
  for (let step = 1; step < STEPS; step++) {
    const flow = surgeFlow + ((chokeFlow - surgeFlow) * step) / STEPS;
    const efficiency = efficiencyOn(line, flow);
    if (efficiency > most) {
      most = efficiency;
      best = flow;
    }
  }
  if (most < level) return { left: null, right: null };
  return {
    left: atSurge >= level ? null : crossingBetween(line, level, best, surgeFlow),
    right: crossingBetween(line, level, best, chokeFlow),
  };
}

/** Halving between a flow that has the level and one that has not. */
function crossingBetween(line: SpeedLine, level: number, reached: number, missed: number): number {
  let [inside, outside] = [reached, missed];
  for (let halving = 0; halving < 24; halving++) {
    const middle = (inside + outside) / 2;
    if (efficiencyOn(line, middle) >= level) inside = middle;
    else outside = middle;
  }
  return inside;
}

/** Stretches of speed that reach the level. */
function runsReached(sides: readonly Sides[]): Run[] {
  const runs: Run[] = [];
  sides.forEach((side, place) => {
    if (side.right === null) return;
    const last = runs.at(-1);
    if (last !== undefined && last.first + last.count === place) {
      last.sides.push(side);
      last.count += 1;
    } else runs.push({ first: place, count: 1, sides: [side] });
  });
  return runs;
}

/** Around a run: up its left side, down its right; broken where the left side is beyond surge. */
function pathsOf({ first, count, sides }: Run, speeds: number): MapPath[] {
  const isClosedBelow = first > 0;
  const isClosedAbove = first + count < speeds;
  const right = sides.map(({ line, right }) => placeOn(line, right!));
  const lefts = sides.map(({ line, left }) => (left === null ? null : placeOn(line, left)));
  const pieces: Place[][] = [[]];
  for (const place of lefts)
    if (place !== null) pieces.at(-1)!.push(place);
    else if (pieces.at(-1)!.length > 0) pieces.push([]);
  const joinsAbove = isClosedAbove && lefts.at(-1) !== null;
  const joinsBelow = isClosedBelow && lefts[0] !== null;
  const down = right.toReversed();
  const last = pieces.at(-1)!;
  if (joinsAbove) last.push(...down);
  else pieces.push(down);
  if (joinsBelow) {
    // The right side ends where the first piece begins.
    const end = pieces.at(-1)!;
    if (pieces.length === 1) end.push(end[0]!);
    else pieces[0] = [...pieces.pop()!, ...pieces[0]!];
  }
  return pieces
    .filter((piece) => piece.length > 1)
    .map((piece) => ({
      flow: piece.map(({ flow }) => flow),
      pressureRatio: piece.map(({ pressureRatio }) => pressureRatio),
    }));
}

interface Place {
  flow: number;
  pressureRatio: number;
}

const placeOn = (line: SpeedLine, flow: number): Place => ({
  flow,
  pressureRatio: pressureRatioOn(line, flow),
});
