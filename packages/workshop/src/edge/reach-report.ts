import type { CorrectionId } from '@pullbook/core/air';
import { displayUnit, fromInside, writeSaid } from '@pullbook/core/quantity';
import {
  type Banded,
  type ChangePart,
  type CostClass,
  type Ground,
  type LeastRemedy,
  type NearPull,
  nearPullsOf,
  type ReachAnswer,
  type ReachChange,
  type ReachInput,
  type ReachTarget,
  type Rung,
  type RungCurve,
  type WhatIsLeft,
} from '@pullbook/core/reach';
import type { Remark, Said } from '@pullbook/core/remark';
import type { LimitFinding, LimitId } from '@pullbook/core/rule';
import type { ViewOptions } from '@pullbook/views';
import { REACH_CAUTIONS, type ReachBundle } from '@pullbook/views/reach';
import { cell } from './match-csv.ts';
import { edgeNumber } from './number.ts';
import { type EdgeRemark, edgeRemarks } from './remark.ts';

/** One change of a rung as it leaves the program. */
export interface EdgeChange {
  part: ChangePart;
  text: string;
  /** Lines of the sheet, `drive.blowerPulleyDiameter`, as a person would enter them; `null`: the line goes. */
  edits: Record<string, string | null>;
  /** Sections that go before the edits. */
  clears: string[];
  costClass: CostClass;
  ground: Ground;
  /** What the ground is. */
  from: string;
}

/** A limit with what was found, in the unit that is named beside both figures; '' of a ratio. */
export interface EdgeLimit {
  limit: LimitId;
  label: string;
  ruleId: string;
  value: number | null;
  threshold: number | null;
  unit: string;
  /** The value must stay below or above the threshold. */
  stay: 'below' | 'above';
  /** Of the threshold, that is left; below 0: passed. */
  marginPercent: number | null;
  engineSpeedRpm: number | null;
  binds: boolean;
  source: string;
  message: string;
}

export interface EdgeRung {
  id: string;
  changes: EdgeChange[];
  peakPowerKw: number | null;
  peakPowerLowKw: number | null;
  peakPowerHighKw: number | null;
  peakPowerEngineSpeedRpm: number;
  /** Without the factor of the standard: what `pullbook match` says. */
  peakPowerObservedKw: number | null;
  /** Of what was asked for. */
  reachedKw: number | null;
  reachedLowKw: number | null;
  reachedHighKw: number | null;
  highestBoostKpa: number | null;
  highestBoostLowKpa: number | null;
  highestBoostHighKpa: number | null;
  highestBoostEngineSpeedRpm: number | null;
  /** Share of the draws that reach the target, 0 to 1. */
  chance: number;
  /** Within every limit that binds. */
  reaches: boolean;
  costTotal: number;
  costHighest: CostClass;
  bindsFirst: EdgeLimit | null;
  /** Every limit that was looked at, nearest first. */
  findings: EdgeLimit[];
  ground: Ground;
  /** What another fuel does, a sentence each; empty: the fuel stays. */
  fuelEffect: string[];
  nearest: EdgeNear[];
  assumptions: EdgeRemark[];
  points: Record<string, number | string | null>[];
}

/** Measured pulls near the target with what separates them from a rung. */
export interface EdgeNear {
  combinationId: string;
  name: string;
  pullIds: string[];
  powerKw: number;
  isSameEngine: boolean;
  side: 'above' | 'below';
  separates: { line: string; pulled: string | null; rung: string | null }[];
}

export interface EdgeRemedy {
  what: LeastRemedy['what'];
  text: string;
  sharePercent: number;
  changes: EdgeChange[];
}

export interface EdgeLeft {
  build: string;
  name: string;
  overallRatio: number;
  blowerPulleyDiameterMm: number | null;
  peakPowerKw: number | null;
  peakPowerLowKw: number | null;
  peakPowerHighKw: number | null;
  peakPowerEngineSpeedRpm: number;
  /** The smallest pulley of the parts list that keeps within; `null`: none does. */
  buyable: {
    blowerPulleyDiameterMm: number;
    peakPowerKw: number | null;
    peakPowerLowKw: number | null;
    peakPowerHighKw: number | null;
    peakPowerEngineSpeedRpm: number;
  } | null;
  /** The limit that stops it; `null`: none within the ratios looked at. */
  stoppedBy: EdgeLimit | null;
  stops: { limit: EdgeLimit; overallRatio: number; peakPowerKw: number | null }[];
}

/** A search as it leaves the program. */
export interface ReachReport {
  schemaVersion: 1;
  combinationId: string | null;
  name: string;
  target: {
    what: ReachTarget['what'];
    powerKw: number;
    engineSpeedRpm: number | null;
    windowRpm: [number, number] | null;
    boostCapKpa: number | null;
  };
  /** Powers stand in it: observed ones times the factor. */
  standard: CorrectionId;
  factor: number;
  feasible: boolean;
  measuredNow: { powerKw: number; pullIds: string[] } | null;
  now: EdgeRung;
  /** Cheapest first; those that reach the target before those that come near it. */
  rungs: EdgeRung[];
  whatIsLeft: EdgeLeft[];
  /** Why none reaches it; `null`: one does. */
  reason: string | null;
  leastRemedy: EdgeRemedy | null;
  remedies: EdgeRemedy[];
  searched: { combinations: number; solved: number };
  draws: number;
  seed: number;
  remarks: EdgeRemark[];
  /** What all of it may not be taken for. */
  cautions: string[];
}

/** `words`: units of sentences for a person; `null`: SI. */
export function reachReport(
  bundle: Pick<ReachBundle, 'combinationId' | 'name' | 'input' | 'near' | 'remarks'>,
  answer: ReachAnswer,
  words: ViewOptions | null,
): ReachReport {
  const { combinationId, name, input, remarks } = bundle;
  const { standard, measuredNow, draws, seed } = input;
  const near = nearPullsOf(bundle.near, [answer.now, ...answer.rungs]);
  return {
    ...answerReport({ combinationId, name, standard, near, remarks }, answer, words),
    measuredNow: measuredNow && { powerKw: measuredNow.power / 1000, pullIds: measuredNow.pullIds },
    draws,
    seed,
  };
}

/** What an answer rests on, as far as it is kept with it. */
export interface AnswerOf {
  combinationId: string | null;
  name: string;
  standard: ReachInput['standard'];
  near: readonly NearPull[];
  remarks: readonly Remark[];
}

/** The answer alone, of a search or as it was kept. */
export function answerReport(
  { combinationId, name, standard, near, remarks }: AnswerOf,
  answer: ReachAnswer,
  words: ViewOptions | null,
): Omit<ReachReport, 'measuredNow' | 'draws' | 'seed'> {
  const { target } = answer;
  const told = (one: Said): string => (words === null ? one.text : writeSaid(one.text, one.parts, words));
  const edge = { told, words, near, factor: standard.factor };
  return {
    schemaVersion: 1,
    combinationId,
    name,
    target: {
      what: target.what,
      powerKw: target.power / 1000,
      engineSpeedRpm: target.atRpm,
      windowRpm: target.windowRpm,
      boostCapKpa: target.boostCap === null ? null : target.boostCap / 1000,
    },
    standard: standard.id,
    factor: standard.factor,
    feasible: answer.feasible,
    now: edgeRung(answer.now, edge),
    rungs: answer.rungs.map((one) => edgeRung(one, edge)),
    whatIsLeft: answer.left.map((one) => edgeLeft(one, told)),
    reason: answer.reason && told(answer.reason),
    leastRemedy: answer.leastRemedy && edgeRemedy(answer.leastRemedy, told),
    remedies: answer.remedies.map((one) => edgeRemedy(one, told)),
    searched: answer.searched,
    remarks: edgeRemarks([...remarks, ...answer.remarks], null, words),
    cautions: [...REACH_CAUTIONS],
  };
}

type Told = (one: Said) => string;

interface AtTheEdge {
  told: Told;
  words: ViewOptions | null;
  near: readonly NearPull[];
  factor: number;
}

function edgeRung(rung: Rung, { told, words, near, factor }: AtTheEdge): EdgeRung {
  const boost = rung.highestBoost;
  return {
    id: rung.id,
    changes: rung.changes.map((one) => edgeChange(one, told)),
    ...peak(rung.peakPower),
    peakPowerObservedKw: thousandth(rung.peakPower.value / factor),
    reachedKw: thousandth(rung.reached.value),
    reachedLowKw: thousandth(rung.reached.low),
    reachedHighKw: thousandth(rung.reached.high),
    highestBoostKpa: thousandth(boost?.value),
    highestBoostLowKpa: thousandth(boost?.low),
    highestBoostHighKpa: thousandth(boost?.high),
    highestBoostEngineSpeedRpm: boost?.atRpm ?? null,
    chance: rung.chance,
    reaches: rung.reaches,
    costTotal: rung.cost.total,
    costHighest: rung.cost.highest,
    bindsFirst: rung.bindsFirst && edgeLimit(rung.bindsFirst, told),
    findings: rung.limits.map((one) => edgeLimit(one, told)),
    ground: rung.ground,
    fuelEffect:
      rung.fuelEffect === null
        ? []
        : edgeRemarks(rung.fuelEffect.because, null, words).map((one) => one.message),
    nearest: near.map(({ separates, power, ...one }) => ({
      ...one,
      powerKw: power / 1000,
      separates: (separates[rung.id] ?? []).map(({ label, before, after }) => ({
        line: label,
        pulled: before,
        rung: after,
      })),
    })),
    assumptions: edgeRemarks(rung.assumptions, null, words),
    points: pointsOf(rung.curve),
  };
}

export const edgeChange = (
  { part, said, edits, clears, cost, ground, from }: ReachChange,
  told: Told,
): EdgeChange => ({
  part,
  text: told(said),
  edits: Object.fromEntries(edits.map(({ section, field, text }) => [`${section}.${field}`, text])),
  clears,
  costClass: cost,
  ground,
  from: told(from),
});

export function edgeLimit(one: LimitFinding, told: Told): EdgeLimit {
  const unit = displayUnit(one.kind, 'si');
  const figure = (value: number) => edgeNumber(fromInside(value, unit, one.kind));
  return {
    limit: one.id,
    label: one.label,
    ruleId: one.ruleId,
    value: figure(one.value),
    threshold: figure(one.threshold),
    unit: unit.name,
    stay: one.stay,
    marginPercent: edgeNumber(100 * one.margin),
    engineSpeedRpm: one.engineSpeedRpm,
    binds: one.binds,
    source: one.source,
    message: told(one.said),
  };
}

const edgeRemedy = ({ what, said, share, changes }: LeastRemedy, told: Told): EdgeRemedy => ({
  what,
  text: told(said),
  sharePercent: 100 * share,
  changes: changes.map((one) => edgeChange(one, told)),
});

function edgeLeft({ buildId, name, most, buyable, stoppedBy, stops }: WhatIsLeft, told: Told): EdgeLeft {
  return {
    build: buildId,
    name,
    overallRatio: most.overallRatio,
    blowerPulleyDiameterMm: thousandfold(most.blowerPulleyDiameter),
    ...peak(most.peakPower),
    buyable: buyable && {
      blowerPulleyDiameterMm: 1000 * buyable.blowerPulleyDiameter,
      ...peak(buyable.peakPower),
    },
    stoppedBy: stoppedBy && edgeLimit(stoppedBy, told),
    stops: stops.map(({ limit, overallRatio, peakPower }) => ({
      limit: edgeLimit(limit, told),
      overallRatio,
      peakPowerKw: thousandth(peakPower),
    })),
  };
}

const thousandth = (value: number | null | undefined) => edgeNumber(value == null ? null : value / 1000);
const thousandfold = (value: number | null) => (value === null ? null : edgeNumber(1000 * value));

const peak = ({ value, low, high, atRpm }: Banded & { atRpm: number }) => ({
  peakPowerKw: thousandth(value),
  peakPowerLowKw: thousandth(low),
  peakPowerHighKw: thousandth(high),
  peakPowerEngineSpeedRpm: atRpm,
});

/** A curve at the edge; names and units as in the points of a match, power in the target's standard. */
function pointsOf({
  engineSpeedRpm,
  power,
  boost,
  map,
  airFlow,
  fuelFlow,
  impellerSpeedRpm,
}: RungCurve): EdgeRung['points'] {
  return engineSpeedRpm.map((speed, node) => ({
    engineSpeedRpm: speed,
    powerKw: thousandth(power.value[node]),
    powerLowKw: thousandth(power.low[node]),
    powerHighKw: thousandth(power.high[node]),
    boostKpa: thousandth(boost?.value[node]),
    boostLowKpa: thousandth(boost?.low[node]),
    boostHighKpa: thousandth(boost?.high[node]),
    impellerSpeedRpm: edgeNumber(impellerSpeedRpm?.[node]),
    airFlowKgPerS: edgeNumber(airFlow[node]),
    fuelFlowKgPerH: edgeNumber(fuelFlow[node] === undefined ? null : 3600 * fuelFlow[node]),
    correctedFlowKgPerS: edgeNumber(map?.correctedFlow[node]),
    compressorPressureRatio: edgeNumber(map?.pressureRatio[node]),
    state: map?.state[node] ?? null,
  }));
}

/** The points of the ladder as CSV, a rung after another, full precision. */
export function csvOfReach({ now, rungs }: ReachReport): string {
  const columns = Object.keys(now.points[0] ?? { engineSpeedRpm: 0 });
  const rows = [now, ...rungs].flatMap((rung, place) =>
    rung.points.map((point) => [
      place === 0 ? 'now' : `${place}`,
      cell(rung.changes.map(({ text }) => text).join('; ')),
      ...columns.map((name) => cell(point[name])),
    ]),
  );
  return `${[['rung', 'changes', ...columns], ...rows].map((row) => row.join(',')).join('\n')}\n`;
}
