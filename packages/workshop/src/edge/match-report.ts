import {
  beyondMeasured,
  driveFigures,
  type FigureBand,
  type MatchCurve,
  type MatchFigure,
  type MatchInput,
} from '@pullbook/core/airpath';
import type { MatchFit } from '@pullbook/core/fit';
import type { Remark } from '@pullbook/core/remark';
import type { Finding } from '@pullbook/core/rule';
import type { ViewOptions } from '@pullbook/views';
import type { MatchedCombination } from '@pullbook/views/match';
import { type BaselinePoint, baselinePoints } from './baseline-points.ts';
import { type EdgeFinding, edgeFindings } from './finding.ts';
import { type FitReport, fitReport } from './fit-report.ts';
import { type MapOfMatch, mapOfMatch } from './map-of-match.ts';
import { type MatchPoint, matchDifferences, matchPoints } from './match-points.ts';
import { edgeNumber } from './number.ts';
import { type EdgeRemark, edgeRemarks } from './remark.ts';

/** One match as it leaves the program. */
export interface MatchedReport {
  /** Letter of the combination in its trial; '' outside one. */
  key: string;
  name: string;
  /** `null`: it stands in a file only. */
  combinationId: string | null;
  /** Air of the match. */
  airPressureKpa: number;
  airTemperatureC: number;
  relativeHumidityPercent: number;
  /** What the engine does alone, and what its air flow rests on. */
  baseline: {
    origin: MatchInput['baseline']['origin'];
    airFlowFrom: MatchInput['baseline']['airBasis'];
    pullIds: string[];
    points: BaselinePoint[];
  };
  map: MapOfMatch;
  points: MatchPoint[];
  /** 95 % band of the difference from another match of the report; `null`: it is the first, or there are no bands. */
  differences: { from: string; points: Record<string, number | null>[] } | null;
  /** Means of its own pulls, as observed; `null`: it was never pulled. */
  measured: MeasuredReport | null;
  drive: DriveReport;
  fit: FitReport | null;
  findings: EdgeFinding[];
  assumptions: EdgeRemark[];
}

/** What was measured, named as in the points of the match. */
export interface MeasuredReport {
  pullIds: string[];
  points: {
    engineSpeedRpm: number;
    brakePowerKw: number | null;
    brakeTorqueNm: number | null;
    boostKpa: number | null;
    manifoldTemperatureC: number | null;
  }[];
}

/** A drive at the highest engine speed of the match. */
export interface DriveReport {
  kind: MatchInput['drive']['kind'];
  pulleyRatio: number;
  stepUp: number;
  slipPercent: number;
  atEngineSpeedRpm: number;
  impellerSpeedRpm: number | null;
  tipSpeedMPerS: number | null;
  torqueNm: number | null;
  beltPullN: number | null;
  beltSpeedMPerS: number | null;
  wrapDeg: number | null;
  gripUsedPercent: number | null;
  /** The maker's limit. */
  maximumImpellerSpeedRpm: number | null;
  /** At the engine's limit plus the over-rev margin, without slip. */
  highestImpellerSpeedRpm: number | null;
  limitUsedPercent: number | null;
}

export interface MatchReport {
  schemaVersion: 1;
  trialId: string | null;
  title: string;
  draws: number | null;
  seed: number | null;
  /** Combinations in the order of the trial, then what was tried. */
  matches: MatchedReport[];
  /** What cannot be matched, with the reason, and the curve that stands in for pulls that were never made; `null`: none. */
  left: { key: string; name: string; reason: EdgeRemark; scaledBaseline: BaselinePoint[] | null }[];
  remarks: EdgeRemark[];
  /** What all of it may not be taken for. */
  cautions: string[];
}

/** The same of one combination: its match stands at the top, what was tried beside it. */
export type MatchReportOfOne = Omit<MatchReport, 'matches'> & MatchedReport & { tried: MatchedReport[] };

/** One match with all that is known of it. */
export interface MatchToReport {
  key: string;
  name: string;
  combinationId: string | null;
  input: MatchInput;
  curve: MatchCurve;
  bands: Record<MatchFigure, FigureBand> | null;
  difference: { from: string; bands: Record<MatchFigure, FigureBand> } | null;
  measured: MatchedCombination['measured'];
  fit: MatchFit | null;
  findings: readonly Finding[];
  assumptions: readonly Remark[];
}

/** `options`: units of sentences for a person; `null`: SI. */
export function matchedReport(one: MatchToReport, options: ViewOptions | null): MatchedReport {
  const { input, curve } = one;
  const { air, baseline, compressor } = input;
  return {
    key: one.key,
    name: one.name,
    combinationId: one.combinationId,
    airPressureKpa: air.pressure / 1000,
    airTemperatureC: air.temperature - 273.15,
    relativeHumidityPercent: 100 * air.relativeHumidity,
    baseline: {
      origin: baseline.origin,
      airFlowFrom: baseline.airBasis,
      pullIds: baseline.pullIds,
      points: baselinePoints(baseline),
    },
    map: mapOfMatch(compressor.map, curve),
    points: matchPoints(curve, beyondMeasured(input, curve), one.bands),
    differences: one.difference && {
      from: one.difference.from,
      points: matchDifferences(curve.engineSpeedRpm, one.difference.bands),
    },
    measured: one.measured && measuredReport(one.measured),
    drive: driveReport(input, curve),
    fit: one.fit && fitReport(one.fit, options),
    findings: edgeFindings(one.findings, options),
    assumptions: edgeRemarks(one.assumptions, null, options),
  };
}

function measuredReport(measured: NonNullable<MatchedCombination['measured']>): MeasuredReport {
  const { pullIds, engineSpeedRpm, power, torque, boost, chargeTemperature } = measured;
  const thousands = (value: number | undefined) => edgeNumber(value === undefined ? value : value / 1000);
  return {
    pullIds,
    points: engineSpeedRpm.map((speed, node) => ({
      engineSpeedRpm: speed,
      brakePowerKw: thousands(power[node]),
      brakeTorqueNm: edgeNumber(torque[node]),
      boostKpa: thousands(boost?.[node]),
      manifoldTemperatureC: edgeNumber((chargeTemperature?.[node] ?? Number.NaN) - 273.15),
    })),
  };
}

function driveReport(
  { drive, compressor: { map } }: MatchInput,
  { engineSpeedRpm, figures }: MatchCurve,
): DriveReport {
  const last = engineSpeedRpm.length - 1;
  const at = {
    engineSpeedRpm: engineSpeedRpm[last]!,
    drivePower: figures.drivePower[last]!,
    wheelExitDiameter: map.isDiameterAssumed ? null : map.wheelExitDiameter,
  };
  const of = driveFigures(drive, at);
  const percent = (share: number | null) => edgeNumber(share === null ? null : 100 * share);
  return {
    kind: drive.kind,
    pulleyRatio: drive.pulleyRatio,
    stepUp: drive.stepUp,
    slipPercent: 100 * drive.slip,
    atEngineSpeedRpm: at.engineSpeedRpm,
    impellerSpeedRpm: edgeNumber(of.impellerSpeedRpm),
    tipSpeedMPerS: edgeNumber(of.tipSpeed),
    torqueNm: edgeNumber(of.crankTorque),
    beltPullN: edgeNumber(of.beltPull),
    beltSpeedMPerS: edgeNumber(of.beltSpeed),
    wrapDeg: drive.wrapAngle === null ? null : (drive.wrapAngle * 180) / Math.PI,
    gripUsedPercent: percent(of.gripUsed),
    maximumImpellerSpeedRpm: drive.maximumImpellerSpeedRpm,
    highestImpellerSpeedRpm: edgeNumber(of.highestImpellerSpeedRpm),
    limitUsedPercent: percent(of.limitUsed),
  };
}

/** Said beside every match: it is reckoned, not measured. */
export const MATCH_CAUTIONS: readonly string[] = [
  'A planning estimate, computed and not measured. The maker’s limits for impeller, belt and engine go before it.',
  'It knows nothing of knock, fuel supply or the strength of parts: go up in boost in small steps, and watch mixture and spark.',
];
