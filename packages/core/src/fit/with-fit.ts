import {
  BENDS,
  bendAt,
  keyOfBaseline,
  keyOfCooler,
  keyOfMap,
  type MatchCase,
  type MatchInput,
  type SpreadGroup,
  type SpreadPart,
} from '../airpath/index.ts';
import { moreLost, openedBySpeed, SAME_RATIO } from './another-ratio.ts';
import type { BendAxis, MatchFit, MoveId, Moves, Shaped } from './model.ts';
import { AS_IT_IS, BENT, MOVES, movedBy, overallRatioOf, placesOn, SHAPED, shapeOver } from './moves.ts';
import { OWN_MOVES, ownSpread } from './own-moves.ts';
import { isAdded, PARAMETERS, PART_OF } from './parameters.ts';

/** Parts of a match's spread that a fit on the same baseline and map has taken into its own. */
const TAKEN_IN: readonly SpreadPart[] = ['baselineAir', 'baselinePower', 'efficiency'];

/**
 * A case with the factors that were fitted to pulls of this engine and supercharger: the fitted combination itself, or the next pulley, another cooler, cam
 * or weather. The fit's spread, correlated, stands in place of what it took in; the rest of the case's own stays. Another combination takes what is not
 * the fitted pulls' alone, and has its own in turn; where the impeller turns at another ratio, head and work are opened a little. With another
 * cooler the charge's heat goes back to what it was before the fit, for the fit cannot part it from the cooler it was made with.
 */
export function withFit({ input, spread }: MatchCase, fit: MatchFit): MatchCase {
  const { axis } = fit;
  const { isSameMap, isSameCooler, isItself, stays, lines, moves } = howTaken(input, fit);

  const replaced = new Set<SpreadPart>(PARAMETERS.filter((id) => !stays.has(id)).map((id) => PART_OF[id]));
  if (isSameMap && sharesAir(input, fit)) for (const part of TAKEN_IN) replaced.add(part);
  if (isSameCooler) replaced.add('cooler');
  return {
    input: movedBy(input, moves, axis),
    spread: [
      ...spread.flatMap((group) => without(group, replaced)),
      linesOf(fit.key, { input, axis, moves }, (id) => (stays.has(id) ? null : lines[MOVES.indexOf(id)]!)),
      ...(isItself ? [] : [ownOf(input, fit, moves), ...openedBySpeed(input, fit)]),
    ],
  };
}

/**
 * A case at the very pulley that was pulled, yet put together anew for another cam or fuel: what belongs to one set-up alone is open once more. Elsewhere
 * `withFit` has it already.
 *
 * @param before without the fit
 */
export function asAnotherSetUp(fitted: MatchCase, before: MatchCase, fit: MatchFit): MatchCase {
  const { isItself, moves } = howTaken(before.input, fit);
  return isItself ? { ...fitted, spread: [...fitted.spread, ownOf(before.input, fit, moves)] } : fitted;
}

/**
 * The input alone, as `withFit` has it: for a search that asks thousands of times what comes out, and never how sure.
 *
 * @example fittedInput(input, fit) // as withFit({ input, spread }, fit).input
 */
export const fittedInput = (input: MatchInput, fit: MatchFit): MatchInput =>
  movedBy(input, howTaken(input, fit).moves, fit.axis);

/** What of a fit goes over to an input, and by how much each is moved. */
function howTaken(input: MatchInput, fit: MatchFit) {
  const { ground } = fit;
  const isSameMap = keyOfMap(input) === ground.map;
  const isSameCooler = ground.coolers.includes(keyOfCooler(input));
  const isItself =
    isSameMap &&
    isSameCooler &&
    keyOfBaseline(input.baseline) === ground.baseline &&
    ground.overallRatios.some((one) => Math.abs(overallRatioOf(input) / one - 1) < SAME_RATIO);
  const stays = new Set<MoveId>(
    MOVES.filter(
      (id) =>
        (id === 'chargeHeat' && !isSameCooler) ||
        (!isSameMap && (id === 'flowScale' || id === 'headScale' || id.startsWith('head '))),
    ),
  );
  const { by, lines } = isItself ? fit.own : fit.carried;
  const moves = Object.fromEntries(MOVES.map((id) => [id, stays.has(id) ? AS_IT_IS[id] : by[id]])) as Moves;
  if (!isItself) moves.workFactor *= moreLost(input, fit);
  return { isSameMap, isSameCooler, isItself, stays, lines, moves };
}

/** Whether the baseline rests on the very pulls without supercharger that the fit's rests on. */
function sharesAir({ baseline }: MatchInput, { ground }: MatchFit): boolean {
  if (keyOfBaseline(baseline) === ground.baseline) return true;
  const [fewer, more] = [ground.baselinePullIds, baseline.pullIds].sort((a, b) => a.length - b.length);
  return fewer!.length > 0 && fewer!.every((id) => more!.includes(id));
}

/** A group less the parts named, unless it is not about what a fit sees; none where nothing is left. */
function without(group: SpreadGroup, drop: ReadonlySet<SpreadPart>): SpreadGroup[] {
  if (group.staysBesideFit) return [group];
  const { key, parts, factor, shapes } = group;
  const left = parts.flatMap((part, line) => (drop.has(part) ? [] : [line]));
  if (left.length === 0) return [];
  return [
    {
      key,
      parts: left.map((line) => parts[line]!),
      factor: left.map((line) => factor[line]!),
      ...(shapes === undefined ? {} : { shapes: left.map((line) => shapes[line]!) }),
    },
  ];
}

/** What is open of moves, as shares of what they are (slip as it is), each bend with its shape over the nodes of the case. */
function linesOf(
  key: string,
  { input, axis, moves }: { input: MatchInput; axis: BendAxis; moves: Moves },
  lineOf: (id: MoveId) => number[] | null,
): SpreadGroup {
  const whole = PARAMETERS.flatMap((id) => {
    const line = lineOf(id);
    const scale = isAdded(id) ? 1 : moves[id];
    return line === null
      ? []
      : [{ part: PART_OF[id], line: line.map((value) => value / scale), shape: null }];
  });
  const bent = SHAPED.flatMap((one: Shaped) => {
    const places = placesOn(axis, input, one);
    const factors = shapeOver(axis, input, moves, one);
    return BENDS.flatMap((bend) => {
      const line = lineOf(`${one} ${bend}`);
      const shape = places.map((place, node) => bendAt(bend, place) / factors[node]!);
      return line === null ? [] : [{ part: PART_OF[BENT[one]], line, shape }];
    });
  });
  const all = [...whole, ...bent];
  return {
    key,
    parts: all.map(({ part }) => part),
    factor: all.map(({ line }) => line),
    shapes: all.map(({ shape }) => shape),
  };
}

/** Of a combination that was not fitted: its own day, belt and spark, as the fitted ones had theirs. */
function ownOf(input: MatchInput, { ground, axis }: MatchFit, moves: Moves): SpreadGroup {
  const spread = ownSpread(input, ground.baseline);
  const key = `own of ${keyOfBaseline(input.baseline)} at a ratio of ${overallRatioOf(input).toFixed(4)}`;
  return linesOf(key, { input, axis, moves }, (id) => {
    const place = (OWN_MOVES as readonly MoveId[]).indexOf(id);
    return place < 0 ? null : OWN_MOVES.map((one, column) => (column === place ? spread[one] : 0));
  });
}
