import { type MatchCase, type MatchCurve, solveMatch } from '../airpath/index.ts';
import { sheetNumber } from '../combination/index.ts';
import type { FuelEffect } from '../fuel/index.ts';
import {
  LIMIT_IDS,
  LIMITS,
  type LimitId,
  type LimitReading,
  type LimitsAt,
  readLimits,
} from '../rule/index.ts';
import { aloneCurve } from './alone-curve.ts';
import { AS_IT_IS } from './as-it-is.ts';
import { type Burning, burning } from './burning.ts';
import { type MadeEngine, madeEngine, withParts } from './made-engine.ts';
import type { ReachInput } from './model.ts';
import { type Following, NOTHING_FOLLOWS, type Picked } from './picked.ts';
import type { SearchGround } from './search-ground.ts';
import { type TargetFigure, targetFigure } from './target-figure.ts';
import { countUpTo, firstOfCurve, firstOfInput } from './up-to-speed.ts';
import { BY_WHAT_IS_USUAL, NOTHING_RAN, type Ran, ranPast, withWhatRan } from './what-ran.ts';

/** An engine with changes, solved and held against the target and its limits. */
export interface Judged {
  picked: Picked;
  follows: Following;
  made: MadeEngine;
  /** With the fuel of the rung; `null`: naturally aspirated. */
  match: MatchCase | null;
  fuelFactor: number[] | null;
  fuelEffect: FuelEffect | null;
  /** As far as the engine is turned. */
  curve: MatchCurve;
  at: LimitsAt;
  /** Of the target, in its standard; NaN where it has none. */
  figure: number;
  /** In the target's standard. */
  peak: { value: number; atRpm: number };
  readings: LimitReading[];
  /** Limits that a plan may not pass and that are passed. */
  passed: LimitReading[];
  reaches: boolean;
  /** No limit that binds is passed. */
  holds: boolean;
}

/** An engine with changes, and what its limits are read off. */
interface Engine {
  made: MadeEngine;
  at: LimitsAt;
}

/** What is mended by a part that follows of itself, and where that part stands. */
const MENDED_BY: Partial<Record<LimitId, keyof Following>> = {
  injectors: 'injectors',
  pump: 'pump',
  belt: 'beltRibs',
};

/** An engine with changes, solved; before what follows of itself and what its limits say. */
interface Solved extends Engine {
  burns: Burning;
  curve: MatchCurve;
  of: TargetFigure['of'];
  /** Of highest power. */
  node: number;
}

function solved(ground: SearchGround, picked: Picked): Solved | null {
  const { input } = ground;
  const made = madeEngine(ground, picked, NOTHING_FOLLOWS);
  if (made === null) return null;
  const burns = burning(made, ground, picked);
  const { match, fuelFactor } = burns;
  const whole =
    match === null ? aloneCurve(made.baseline, made.breathing, fuelFactor) : solveMatch(match.input);
  const stopped = picked.speedLimit === null ? null : input.speedLimits[picked.speedLimit]!;
  const count = stopped === null ? whole.engineSpeedRpm.length : countUpTo(whole.engineSpeedRpm, stopped);
  if (count < 2) return null;
  const curve = firstOfCurve(whole, count);
  const { of, peakOf } = targetFigure(input.target, curve.engineSpeedRpm);
  const node = peakOf(curve.figures.brakePower);
  if (node < 0) return null;
  const top = curve.engineSpeedRpm.at(-1)!;
  const limit = sheetNumber(made.sheet, 'ignition', 'engineSpeedLimit') ?? top;
  const at: LimitsAt = {
    sheet: made.sheet,
    input: match === null ? null : firstOfInput(match.input, count),
    curve,
    supply: made.supply,
    boostCap: input.target.boostCap,
    highestEngineSpeedRpm: Math.max(limit, top),
  };
  return { made, at, burns, curve, of, node };
}

/** `null`: the changed sheet cannot be matched, or has no solution at any speed. */
export function judged(ground: SearchGround, picked: Picked): Judged | null {
  const engine = solved(ground, picked);
  if (engine === null) return null;
  const { input } = ground;
  const { burns, curve, of, node } = engine;
  const { match, fuelFactor, effect } = burns;
  const power = curve.figures.brakePower;
  const served = withWhatFollows(ground, picked, engine);
  const figure = of(power) * input.standard.factor;
  const passed = served.readings.filter(({ binds, margin }) => binds && margin < 0);
  const hasSolution = !curve.state.includes('no solution');
  return {
    picked,
    follows: served.follows,
    made: served.made,
    match: match === null || served.made.match === null ? match : withRibs(match, served.made.match),
    fuelFactor,
    fuelEffect: effect,
    curve,
    at: served.at,
    figure,
    peak: { value: power[node]! * input.standard.factor, atRpm: curve.engineSpeedRpm[node]! },
    readings: served.readings,
    passed,
    reaches: hasSolution && figure >= input.target.power,
    holds: hasSolution && passed.length === 0,
  };
}

/** A rough look asks only for what a plan may not pass, and for the spark, which takes longest, only where nothing else is passed. */
function readingsAt(ground: SearchGround, at: LimitsAt): LimitReading[] {
  const { input, isRough } = ground;
  const read = (ids: readonly LimitId[]) =>
    withWhatRan(readLimits(at, input.thresholds, input.binding, ids), whatRan(ground));
  if (!isRough) return read(LIMIT_IDS);
  const ids = bindingIds(input);
  const quick = read(ids.filter((id) => id !== 'spark'));
  const isOver = quick.some(({ binds, margin }) => binds && margin < 0);
  return isOver || !ids.includes('spark') ? quick : [...quick, ...read(['spark'])];
}

/** What of the limits by what is usual the engine passes as it was pulled. */
export function whatRan(ground: SearchGround): Ran {
  const { input } = ground;
  if (input.measuredNow === null) return NOTHING_RAN;
  return ground.once('what ran', () => {
    const present = solved(ground, AS_IT_IS);
    return present === null
      ? NOTHING_RAN
      : ranPast(readLimits(present.at, input.thresholds, input.binding, BY_WHAT_IS_USUAL));
  });
}

const bindingIds = ({ binding }: ReachInput): LimitId[] =>
  LIMIT_IDS.filter((id) => binding[id] ?? LIMITS[id].bindsUsually);

/** Injectors, pump and belt that are too small are changed to the smallest of the list that serve; where none does they stay. */
function withWhatFollows(
  ground: SearchGround,
  picked: Picked,
  present: Engine,
): Engine & { follows: Following; readings: LimitReading[] } {
  const { input } = ground;
  let { at, made } = present;
  let follows = NOTHING_FOLLOWS;
  let readings = readingsAt(ground, at);
  for (const [id, list] of Object.entries(MENDED_BY) as [LimitId, keyof Following][]) {
    if (!isPassed(readings, id)) continue;
    for (let place = 0; place < input[LISTS[list]].length; place++) {
      const tried = { ...follows, [list]: place };
      const next = engineWith(ground, picked, { at, made }, tried);
      if (next === null) continue;
      const read = readingsAt(ground, next.at);
      if (!isKept(read, id)) continue;
      ({ at, made } = next);
      follows = tried;
      readings = read;
      break;
    }
  }
  return { at, follows, readings, made };
}

const LISTS = { injectors: 'injectors', pump: 'pumps', beltRibs: 'beltRibs' } as const;

/** Looked at and not passed: a part of which nothing is known serves nothing. */
const isKept = (readings: readonly LimitReading[], id: LimitId): boolean =>
  readings.some((one) => one.id === id && !(one.binds && one.margin < 0));

const isPassed = (readings: readonly LimitReading[], id: LimitId): boolean =>
  readings.some((one) => one.id === id && one.binds && one.margin < 0);

/** The engine as it was solved, with parts that change nothing of its match but what its belt holds. */
function engineWith(
  ground: SearchGround,
  picked: Picked,
  { at, made }: Engine,
  follows: Following,
): Engine | null {
  const next = withParts(ground, made, picked, follows);
  if (next === null) return null;
  const { sheet, supply, match } = next;
  const input =
    at.input === null || match === null
      ? at.input
      : { ...at.input, drive: { ...at.input.drive, ribs: match.input.drive.ribs } };
  return { made: next, at: { ...at, sheet, supply, input } };
}

const withRibs = (match: MatchCase, { input }: MatchCase): MatchCase => ({
  ...match,
  input: { ...match.input, drive: { ...match.input.drive, ribs: input.drive.ribs } },
});
