import { type AirState, airState } from '../../air/index.ts';
import { type CombinationSheet, deriveFigures } from '../../combination/index.ts';
import { fingerprintOfCurves, mean } from '../../numeric/index.ts';
import { type ChannelMeaning, carriedFactor, type Pull, type PullView, pointsAt } from '../../pull/index.ts';
import { figureOf, percentFigure } from '../../quantity/index.ts';
import { accepted, type Remark, type Result, refused, remark, said } from '../../remark/index.ts';
import type { AirBasis, Baseline } from '../model.ts';
import { airFlowFigure } from '../way/air-flow-figure.ts';
import { type AirOfPull, airOfPull } from './air-of-pull.ts';
import { airOfViewedPull } from './air-of-viewed-pull.ts';
import { motoredFriction } from './assumed-friction.ts';
import {
  airFromPower,
  airOfPower,
  assumedManifoldPressure,
  frictionAssumed,
  manifoldPressureAssumed,
  manifoldTemperatureAssumed,
} from './baseline-parts.ts';

/** A pull with its curves. */
export interface ViewedPull {
  pull: Pull;
  view: PullView;
}

/** Share by which the air of pulls that are put together may differ in density (common practice, no source). */
const AIRS_ALIKE = 0.03;
/** Volumetric efficiency at manifold density of engines on a brake (common practice, no source). */
const USUAL_FILLING = { low: 0.5, high: 1.3 };

/**
 * What the engine does without the supercharger, from one or more pulls of it: the mean, node by node, of power as observed in their own air;
 * corrected figures are carried back by the factor they hold. Air by what was measured, the most trusted first (`airBasis`), the rest
 * assumed with a remark each. Refused where a factor is not known, or no speed is common to all pulls.
 *
 * @example baselineFromPulls([{ pull, view }], sheet) // { ok: true, value: { engineSpeedRpm, brakePower, airFlow, … } }
 */
export function baselineFromPulls(pulls: readonly ViewedPull[], sheet: CombinationSheet): Result<Baseline> {
  if (pulls.length === 0) return refused(NO_PULLS);
  const remarks: Remark[] = [];
  const airs: AirState[] = [];
  for (const { pull, view } of pulls) {
    if (view.curve === null) return refused(noCurve(pull));
    if (observedFactor(view, pull) === null) return refused(factorUnknown(pull));
    const air = airOfViewedPull({ pull, view });
    if (!air.ok) return air;
    airs.push(air.value);
  }
  const air = meanAir(airs);
  if (airs.some(({ density }) => Math.abs(density / air.density - 1) > AIRS_ALIKE)) remarks.push(airsDiffer);

  const engineSpeedRpm = commonSpeeds(pulls);
  if (engineSpeedRpm.length < 2) return refused(NO_COMMON_SPEEDS);
  const over = (meaning: ChannelMeaning) => meanOver(pulls, meaning, engineSpeedRpm);
  const brakePower = meanOf(
    pulls.map(({ pull, view }) =>
      readAt(view, 'power', engineSpeedRpm).map((power) => power / observedFactor(view, pull)!),
    ),
  );

  const displacement = deriveFigures(sheet).find(({ id }) => id === 'displacement')!;
  if (displacement.value === null) return refused(noDisplacement(displacement.missing ?? ''));
  const sweep = displacement.value;
  const frictionPower = engineSpeedRpm.map((speed) => motoredFriction(sweep, speed));
  remarks.push(frictionAssumed);

  const compressionRatio = deriveFigures(sheet).find(({ id }) => id === 'compressionRatio')!.value;
  const measured = airTogether(pulls, sheet, engineSpeedRpm);
  const airFlow =
    measured?.airFlow ??
    brakePower.map((power, node) => airOfPower(power + frictionPower[node]!, compressionRatio));
  remarks.push(...(measured?.remarks ?? [airFromPower(compressionRatio)]));

  const boost = over('boost');
  const readPressure = over('manifoldPressure') ?? boost?.map((gauge) => air.pressure + gauge) ?? null;
  if (readPressure === null) remarks.push(manifoldPressureAssumed);
  const manifoldPressure = filled(readPressure, assumedManifoldPressure(airFlow, air));
  const readTemperature = over('chargeTemperature');
  if (readTemperature === null) remarks.push(manifoldTemperatureAssumed(air));
  const manifoldTemperature = filled(
    readTemperature,
    engineSpeedRpm.map(() => air.temperature),
  );

  const usable = engineSpeedRpm
    .map((_, node) => node)
    .filter((node) => brakePower[node]! > 0 && airFlow[node]! > 0);
  if (usable.length < 2) return refused(NO_COMMON_SPEEDS);
  const pick = (values: readonly number[]) => usable.map((node) => values[node]!);
  const baseline: Baseline = {
    engineSpeedRpm: pick(engineSpeedRpm),
    brakePower: pick(brakePower),
    airFlow: pick(airFlow),
    frictionPower: pick(frictionPower),
    manifoldPressure: pick(manifoldPressure),
    manifoldTemperature: pick(manifoldTemperature),
    lambda: measured?.lambda == null ? null : pick(measured.lambda),
    air,
    airBasis: measured?.basis ?? ('torque and efficiency' satisfies AirBasis),
    origin: 'measured',
    pullIds: pulls.map(({ pull }) => pull.id),
    mark: fingerprintOfCurves(pick(engineSpeedRpm), pick(brakePower), pick(airFlow)),
  };
  return accepted(baseline, [...remarks, ...fillingRemarks(baseline, sweep)]);
}

/** What the view's figures hold over observed ones; `null`: not known. */
export function observedFactor({ correction }: PullView, pull: Pull): number | null {
  if (correction.reached) return correction.factor;
  return pull.carried.standard === 'not stated' ? 1 : carriedFactor(pull.carried);
}

/** Engine speeds at which every pull has power, r/min. */
export function commonSpeeds(pulls: readonly ViewedPull[]): number[] {
  const finest = pulls.reduce((best, one) =>
    (one.view.curve?.engineSpeedRpm.length ?? 0) > (best.view.curve?.engineSpeedRpm.length ?? 0) ? one : best,
  );
  const speeds = Array.from(finest.view.curve?.engineSpeedRpm ?? []);
  const all = pulls.map(({ view }) => readAt(view, 'power', speeds));
  return speeds.filter((_, node) => all.every((power) => Number.isFinite(power[node]!)));
}

/** A channel of a view at engine speeds; NaN where it has none. Between its nodes on the straight line. */
export function readAt(view: PullView, meaning: ChannelMeaning, speedsRpm: readonly number[]): number[] {
  return view.curve === null
    ? speedsRpm.map(() => Number.NaN)
    : Array.from(pointsAt(view.curve, meaning, speedsRpm));
}

function meanOver(
  pulls: readonly ViewedPull[],
  meaning: ChannelMeaning,
  speedsRpm: readonly number[],
): number[] | null {
  const having = pulls.filter(({ view }) => view.curve?.channels.has(meaning));
  if (having.length === 0) return null;
  const values = meanOf(having.map(({ view }) => readAt(view, meaning, speedsRpm)));
  return values.some(Number.isFinite) ? values : null;
}

/** Air of those pulls that are on the most trusted footing; `null`: no pull measured any. */
function airTogether(
  pulls: readonly ViewedPull[],
  sheet: CombinationSheet,
  speedsRpm: readonly number[],
): AirOfPull | null {
  const found = pulls.flatMap(({ pull, view }) => {
    const channels = new Map(
      [...(view.curve?.channels.keys() ?? [])].map((meaning) => [meaning, readAt(view, meaning, speedsRpm)]),
    );
    const one = airOfPull(channels, { sheet, tune: pull.tune, boosted: false });
    return one === null ? [] : [one];
  });
  const basis = found.some((one) => one.basis === 'air flow') ? 'air flow' : 'fuel and mixture';
  const best = found.filter((one) => one.basis === basis);
  if (best.length === 0) return null;
  const lambdas = best.flatMap(({ lambda }) => (lambda === null ? [] : [lambda]));
  return {
    airFlow: meanOf(best.map(({ airFlow }) => airFlow)),
    lambda: lambdas.length === 0 ? null : meanOf(lambdas),
    basis,
    remarks: best.flatMap((one) => one.remarks).slice(0, 1),
  };
}

/** Node by node, of the finite ones. */
const meanOf = (rows: readonly (readonly number[])[]): number[] =>
  (rows[0] ?? []).map((_, node) => mean(rows.map((row) => row[node]!)));

const filled = (read: readonly number[] | null, assumed: readonly number[]): number[] =>
  assumed.map((value, node) => (Number.isFinite(read?.[node]) ? read![node]! : value));

/** The mean of airs, made again from their mean readings so that its parts belong together. */
export function meanAir(airs: readonly AirState[]): AirState {
  const pick = (of: (air: AirState) => number) => mean(airs.map(of));
  const made = airState({
    pressure: pick((air) => air.pressure) as AirState['pressure'],
    temperature: pick((air) => air.temperature) as AirState['temperature'],
    humidity: {
      route: 'vapourPressure',
      pressure: pick((air) => air.vapourPressure) as AirState['pressure'],
    },
    altitude: null,
  });
  if (!made.ok)
    throw new Error(`mean of ${airs.length} possible airs is not possible: ${made.remarks[0]?.message}`);
  return made.value;
}

function fillingRemarks(baseline: Baseline, displacement: number): Remark[] {
  const { engineSpeedRpm, airFlow, manifoldPressure, manifoldTemperature, air } = baseline;
  const gasConstant = air.pressure / (air.density * air.temperature);
  const filling = airFlow.map((flow, node) => {
    const density = manifoldPressure[node]! / (gasConstant * manifoldTemperature[node]!);
    return (120 * flow) / (density * displacement * engineSpeedRpm[node]!);
  });
  const odd = filling.findIndex((share) => !(share > USUAL_FILLING.low && share < USUAL_FILLING.high));
  if (odd < 0) return [];
  return [
    remark(
      'caution',
      'filling-odd',
      said`At ${figureOf(engineSpeedRpm[odd]!, 'engineSpeed')} the engine would fill its cylinders to ${percentFigure(filling[odd]!)} with ${airFlowFigure(airFlow[odd]!)} of air; ${percentFigure(USUAL_FILLING.low)} to ${percentFigure(USUAL_FILLING.high)} is usual. Check displacement, fuel flow and lambda, and their units.`,
    ),
  ];
}

const NO_PULLS = remark(
  'refusal',
  'no-baseline-pulls',
  'There is no pull without the supercharger. Pull the engine naturally aspirated with the same cam, heads and exhaust.',
);

const NO_COMMON_SPEEDS = remark(
  'refusal',
  'no-common-speeds',
  'The pulls without the supercharger have no engine speeds with power in common. Leave out the one that was swept over another range.',
);

const airsDiffer = remark(
  'caution',
  'airs-differ',
  said`The pulls without the supercharger were made in airs whose density differs by more than ${percentFigure(AIRS_ALIKE)}; they are put together all the same, in their mean air.`,
);

const noCurve = (pull: Pull) =>
  remark(
    'refusal',
    'baseline-without-curve',
    `${pull.name} has no curve over engine speed, so nothing can be matched on it. Take a logged pull.`,
  );

const factorUnknown = (pull: Pull) =>
  remark(
    'refusal',
    'baseline-factor-unknown',
    `${pull.name} was corrected by a factor that is not known, and a match needs the power as observed. Enter the factor of the pull, or take another pull.`,
  );

const noDisplacement = (why: string) =>
  remark(
    'refusal',
    'no-displacement',
    `The displacement is not known (${why}), so what the engine swallows is not either. Enter bore, stroke and cylinders, or the displacement, under short block.`,
  );
