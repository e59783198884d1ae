import { keyOfBaseline, keyOfCooler, keyOfMap, solveMatch } from '../airpath/index.ts';
import { fingerprintOfCurves } from '../numeric/index.ts';
import { accepted, type Result, refused, remark } from '../remark/index.ts';
import { coarse } from './coarse.ts';
import { findMoves } from './fit-problem.ts';
import { airStandsAway, cannotBeToldApart, effectiveNumber, fittedTogether } from './fit-remarks.ts';
import { channelsFor } from './meter-bias.ts';
import type { FitParameter, FitTarget, FittedMoves, MatchFit } from './model.ts';
import { axisOf, movedBy, overallRatioOf } from './moves.ts';
import { OWN_MOVES, type OwnMoveId, ownSpread } from './own-moves.ts';
import { isAdded, PARAMETERS, valuesOf } from './parameters.ts';
import { priorOfFit, varianceOf } from './prior-of-fit.ts';
import { readingsOfFit } from './readings-of-fit.ts';
import { readingsOf } from './readings-on-nodes.ts';
import { residualsOf } from './residuals-of-fit.ts';
import { dot } from './whitened.ts';

/**
 * A match adapted to one or more boosted pulls of a combination: the head of the map, what the engine swallows, the charge's heat and the work of the air are
 * moved from their priors as far as boost, power, temperatures and air ask for (maximum a posteriori); slip only where the shaft's speed was logged. Head,
 * swallowing and work may also bend smoothly over speed. Errors along a curve are held together, so that a pull of a hundred speeds is not a hundred
 * readings. Pulls in the order they were made.
 *
 * @example fitMatch([{ ...ready, pull: boostedPullOf(…) }]) // { ok: true, value: { parameters, residuals, readings, … } }
 */
export function fitMatch(targets: readonly FitTarget[]): Result<MatchFit> {
  const fits = fitTogether([targets]);
  return fits.ok ? accepted(fits.value[0]!, fits.remarks) : fits;
}

/**
 * The same for combinations of one engine with one supercharger at once, a fit for each in the order given: head, flow, charge heat and slip of the
 * unit are one for all, swallowing and work have a part that is each combination's own. What they share is drawn together, so that it cancels in
 * their differences.
 */
export function fitTogether(combinations: readonly (readonly FitTarget[])[]): Result<MatchFit[]> {
  const whole = combinations.flat();
  const [first] = whole;
  if (first === undefined || combinations.some(({ length }) => length === 0)) return refused(NO_TARGETS);
  const stranger = strangerAmong(combinations);
  if (stranger !== null) return refused(notOneGround(stranger.pull.pullId));

  const targets = whole.map(coarse);
  const before = targets.map(({ input }) => solveMatch(input));
  const channels = channelsFor(first)
    .map((channel) => readingsOf(channel, targets, before))
    .filter(({ readings }) => readings.length > 0);
  if (!channels.some(({ channel }) => channel.channel === 'boost' || channel.channel === 'brakePower'))
    return refused(NOTHING_TO_FIT);

  const baseline = keyOfBaseline(first.input.baseline);
  const prior = priorOfFit(first);
  const own = combinations.map(([one]) => ownSpread(one!.input, baseline));
  const axis = axisOf(first.input);
  const hasShaft = channels.some(({ channel }) => channel.channel === 'impellerSpeedRpm');
  const found = findMoves({
    targets,
    combinationOf: combinations.flatMap((ofOne, combination) => ofOne.map(() => combination)),
    channels,
    prior,
    own,
    axis,
    held: hasShaft ? [] : ['slip'],
  });
  const restsOn = whole.map(({ pull }) => pull.pullId);
  // By their figures and not by their ids, for draws go by it.
  const key = `fit on ${fingerprintOfCurves(...whole.flatMap(({ pull }) => [pull.engineSpeedRpm, pull.brakePower]))}`;
  const fits = combinations.map((ofOne, combination): MatchFit => {
    const moves = found.combinations[combination]!;
    const after = ofOne.map(({ input }) => solveMatch(movedBy(input, moves.by, axis)));
    const residuals = residualsOf(ofOne, after);
    const fit: MatchFit = {
      pullIds: ofOne.map(({ pull }) => pull.pullId),
      restsOn,
      ground: {
        baseline: keyOfBaseline(ofOne[0]!.input.baseline),
        baselinePullIds: ofOne[0]!.input.baseline.pullIds,
        map: keyOfMap(first.input),
        coolers: [...new Set(ofOne.map(({ input }) => keyOfCooler(input)))],
        overallRatios: ofOne.map(({ input }) => overallRatioOf(input)),
        ...(ofOne[0]!.fuel === undefined ? {} : { fuel: ofOne[0]!.fuel }),
      },
      parameters: parametersOf(ofOne[0]!, moves, { prior, own: own[combination]!, from: found.from }),
      lostWork: lostWorkOf(ofOne[0]!, found.shared),
      axis,
      own: moves,
      carried: found.shared,
      key,
      residuals,
      readings: [],
      remarks: [
        ...(found.isSettled ? [] : [NOT_SETTLED]),
        ...fittedTogether(ofOne.length, whole.length),
        effectiveNumber(channels),
        ...cannotBeToldApart(covarianceOfLines(moves.lines), channels),
        ...airStandsAway(residuals),
      ],
    };
    return { ...fit, readings: readingsOfFit(fit, ofOne, after) };
  });
  return accepted(
    fits,
    fits.flatMap(({ remarks }) => remarks),
  );
}

interface Beforehand {
  prior: readonly number[][];
  own: Record<OwnMoveId, number>;
  from: Record<FitParameter['id'], string[]>;
}

function parametersOf({ input }: FitTarget, { by, lines }: FittedMoves, { prior, own, from }: Beforehand) {
  const values = valuesOf(input);
  return PARAMETERS.map((id, place): FitParameter => {
    const value = values[id];
    const scale = isAdded(id) ? 1 : value;
    const ownId = OWN_MOVES.find((one) => one === id);
    return {
      id,
      prior: {
        value,
        spread: scale * Math.hypot(Math.sqrt(prior[place]![place]!), ownId === undefined ? 0 : own[ownId]),
      },
      value: isAdded(id) ? value + by[id] : value * by[id],
      spread: scale * Math.sqrt(dot(lines[place]!, lines[place]!)),
      from: from[id],
    };
  });
}

/**
 * Of what looks like lost work some is none: air of the baseline that was reckoned too small shows as more swallowed and as less work of each
 * kilogram.
 */
function lostWorkOf({ input, spread }: FitTarget, { by }: FittedMoves): number {
  const air = varianceOf(spread, 'baselineAir');
  const ofAir = air > 0 ? air / (air + varianceOf(spread, 'swallowing')) : 0;
  return Math.max(0, 1 - input.work.factor * by.workFactor * by.swallowingScale ** ofAir);
}

/** Of the parameters alone. */
const covarianceOfLines = (lines: readonly number[][]): number[][] =>
  PARAMETERS.map((_, i) => PARAMETERS.map((__, j) => dot(lines[i]!, lines[j]!)));

/** A target that does not belong: one map for all, one baseline for each combination. */
function strangerAmong(combinations: readonly (readonly FitTarget[])[]): FitTarget | null {
  const map = keyOfMap(combinations[0]![0]!.input);
  for (const ofOne of combinations) {
    const baseline = keyOfBaseline(ofOne[0]!.input.baseline);
    const stranger = ofOne.find(
      ({ input }) => keyOfBaseline(input.baseline) !== baseline || keyOfMap(input) !== map,
    );
    if (stranger !== undefined) return stranger;
  }
  return null;
}

const NO_TARGETS = remark(
  'refusal',
  'nothing-fitted',
  'There is no boosted pull to fit to. Pull the combination once with its supercharger.',
);

const NOTHING_TO_FIT = remark(
  'refusal',
  'nothing-to-fit',
  'The boosted pulls share no engine speed with the pull without supercharger at which both have a figure. Sweep both over the same speeds.',
);

const NOT_SETTLED = remark(
  'caution',
  'fit-not-settled',
  'The fit did not settle: its factors are the best found and may still move. Check the pulls and the map it was made on.',
);

const notOneGround = (pullId: string) =>
  remark(
    'refusal',
    'fit-on-two-engines',
    `Pull ${pullId} belongs to another engine, another pull without supercharger or another compressor map than the first. Fit each by itself.`,
  );
