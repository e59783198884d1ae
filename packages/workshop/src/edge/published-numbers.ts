import type { PublishedFigure } from '@pullbook/core/publication';
import { figuresOf } from '@pullbook/core/publication';
import { fromInside } from '@pullbook/core/quantity';
import type { TrialAnswer } from '@pullbook/core/trial';
import { type CompareReport, compareReport } from './compare-report.ts';
import { edgeNumber, edgeRange } from './number.ts';

/** The figures of a trial that go with whatever leaves the shop: kW, N·m, kPa, r/min; keys as in the other JSON. */
export interface PublishedNumbers {
  schemaVersion: 1;
  question: string;
  /** As in the comparisons: asked and reached. */
  standard: string | null;
  averagesWindowRpm: [number, number] | null;
  invented: boolean;
  /** Of each combination that has a counted pull. */
  combinations: CombinationNumbers[];
  /** As `compare` and `show` give them, without what is said of single pulls. */
  comparisons: PublishedComparison[];
}

export type PublishedComparison = { key: string } & Omit<CompareReport, 'conditions' | 'remarks'>;

export interface CombinationNumbers {
  key: string;
  shortName: string;
  pulls: number;
  averagePowerKw: number | null;
  averagePowerLowKw: number | null;
  averagePowerHighKw: number | null;
  peakPowerKw: number | null;
  peakPowerLowKw: number | null;
  peakPowerHighKw: number | null;
  peakPowerRpm: number | null;
  /** The highest figure is the last row of the pulls: no peak. */
  stillClimbing: boolean;
  peakTorqueNm: number | null;
  peakTorqueLowNm: number | null;
  peakTorqueHighNm: number | null;
  peakTorqueRpm: number | null;
  highestBoostKpa: number | null;
  highestBoostLowKpa: number | null;
  highestBoostHighKpa: number | null;
  highestBoostRpm: number | null;
}

/** What is laid into every still and report, and read back from it. */
export function publishedNumbers(answer: TrialAnswer): PublishedNumbers {
  const { trial, comparison, views, pulls } = answer;
  const figures = figuresOf(answer);
  const counted = trial.pulls.filter(({ role }) => role === 'counted');
  return {
    schemaVersion: 1,
    question: trial.question,
    standard: comparison?.correction.standard ?? null,
    averagesWindowRpm: edgeRange(comparison?.averagesWindowRpm),
    invented: trial.invented || counted.some(({ pullId }) => pulls.get(pullId)?.invented === true),
    combinations: (comparison?.combinations ?? []).map((one) => ({
      key: one.key,
      shortName: trial.combinations.find(({ key }) => key === one.key)?.shortName ?? one.key,
      pulls: one.pullIds.length,
      ...combinationFigures((id) => figures.find((figure) => figure.id === id && figure.key === one.key)),
      stillClimbing: one.peakPower?.stillClimbing ?? false,
    })),
    comparisons: (comparison?.gains ?? []).map(({ changedKey }) => {
      const report = compareReport(comparison!, changedKey, [...views.values()]);
      const { conditions: _conditions, remarks: _remarks, ...figures } = report;
      return { key: changedKey, ...figures };
    }),
  };
}

function combinationFigures(
  figure: (id: PublishedFigure['id']) => PublishedFigure | undefined,
): Omit<CombinationNumbers, 'key' | 'shortName' | 'pulls' | 'stillClimbing'> {
  const power = { average: inUnit(figure('averagePower'), 'kW'), peak: inUnit(figure('peakPower'), 'kW') };
  const torque = inUnit(figure('peakTorque'), 'N·m');
  const boost = inUnit(figure('highestBoost'), 'kPa');
  return {
    averagePowerKw: power.average.value,
    averagePowerLowKw: power.average.low,
    averagePowerHighKw: power.average.high,
    peakPowerKw: power.peak.value,
    peakPowerLowKw: power.peak.low,
    peakPowerHighKw: power.peak.high,
    peakPowerRpm: power.peak.rpm,
    peakTorqueNm: torque.value,
    peakTorqueLowNm: torque.low,
    peakTorqueHighNm: torque.high,
    peakTorqueRpm: torque.rpm,
    highestBoostKpa: boost.value,
    highestBoostLowKpa: boost.low,
    highestBoostHighKpa: boost.high,
    highestBoostRpm: boost.rpm,
  };
}

function inUnit(figure: PublishedFigure | undefined, unit: string) {
  const edge = (value: number | null | undefined) =>
    edgeNumber(figure && value != null ? fromInside(value, unit, figure.kind) : null);
  return {
    value: edge(figure?.value),
    low: edge(figure?.low),
    high: edge(figure?.high),
    rpm: edgeNumber(figure?.engineSpeedRpm),
  };
}
