import type { Spread } from '@pullbook/core/scatter';
import type { InductionClass, Prediction } from '@pullbook/core/shop';
import type { CalibrationRow } from '../calibration-log.ts';
import type { KeptPrediction } from '../predictions.ts';
import type { FiguresOfShop } from '../shop-figures.ts';

/** A spread at the edge. */
export interface SpreadReport {
  sigmaPercent: number;
  degreesOfFreedom: number;
  from: Spread['from'];
}

/** The shop's own figures as they leave the program. */
export interface FiguresReport {
  schemaVersion: 1;
  pullsNotRead: number;
  repeatability: (SpreadReport & {
    cell: string | null;
    induction: InductionClass;
    clusters: number;
    pulls: number;
    overTime: { month: string; sigmaPercent: number; degreesOfFreedom: number; clusters: number }[];
  })[];
  setUp: SpreadReport & { returns: number };
  day: SpreadReport & { returns: number };
  cell: SpreadReport & { pairs: number };
  /** Of the slope in time: per cent an hour. */
  driftPerHour: SpreadReport;
  sessions: {
    sessionId: string | null;
    day: string;
    cell: string | null;
    pulls: number;
    driftPercentPerHour: number | null;
    driftSigmaPercentPerHour: number | null;
    sentinelPercent: number | null;
  }[];
  cellOffsets: {
    from: string;
    to: string;
    offsetPercent: number;
    offsetPercentLow: number;
    offsetPercentHigh: number;
    engines: number;
  }[];
  calibrations: CalibrationRow[];
  predictions: PredictionReport[];
  predictionsMeasured: number;
  predictionsInside: number;
}

export interface PredictionReport {
  id: string;
  trialId: string;
  question: string;
  key: string;
  what: 'meanGain' | 'peakPower' | 'highestBoost';
  /** In per cent of the baseline's average power for a gain, in kW for a peak, in kPa for a boost; the others are `null`. */
  gainPercent: number | null;
  gainPercentLow: number | null;
  gainPercentHigh: number | null;
  measuredGainPercent: number | null;
  peakPowerKw: number | null;
  peakPowerKwLow: number | null;
  peakPowerKwHigh: number | null;
  measuredPeakPowerKw: number | null;
  highestBoostKpa: number | null;
  highestBoostKpaLow: number | null;
  highestBoostKpaHigh: number | null;
  measuredHighestBoostKpa: number | null;
  basis: string;
  at: string;
  inside: boolean | null;
}

const percent = (share: number): number => 100 * share;
const percentOrNull = (share: number | null): number | null => (share === null ? null : percent(share));

const spreadReport = ({ sigma, degreesOfFreedom, from }: Spread): SpreadReport => ({
  sigmaPercent: percent(sigma),
  degreesOfFreedom,
  from,
});

export function figuresReport({
  figures,
  calibrations,
  predictions,
  pullsNotRead,
}: FiguresOfShop): FiguresReport {
  const { repeatability, setUp, day, cell, drift, cellOffsets } = figures;
  const measured = predictions.filter(({ inside }) => inside !== null);
  return {
    schemaVersion: 1,
    pullsNotRead,
    repeatability: repeatability.map(({ spread, overTime, ...about }) => ({
      ...about,
      ...spreadReport(spread),
      overTime: overTime.map(({ sigma, ...month }) => ({ ...month, sigmaPercent: percent(sigma) })),
    })),
    setUp: { returns: setUp.returns, ...spreadReport(setUp.spread) },
    day: { returns: day.returns, ...spreadReport(day.spread) },
    cell: { pairs: cell.pairs, ...spreadReport(cell.spread) },
    driftPerHour: spreadReport(drift.spread),
    sessions: drift.sessions.map(({ perHour, perHourSpread, sentinel, ...about }) => ({
      ...about,
      driftPercentPerHour: percentOrNull(perHour),
      driftSigmaPercentPerHour: percentOrNull(perHourSpread),
      sentinelPercent: percentOrNull(sentinel),
    })),
    cellOffsets: cellOffsets.map(({ ratio, low, high, ...about }) => ({
      ...about,
      offsetPercent: percent(ratio),
      offsetPercentLow: percent(low),
      offsetPercentHigh: percent(high),
    })),
    calibrations,
    predictions: predictions.map(predictionReport),
    predictionsMeasured: measured.length,
    predictionsInside: measured.filter(({ inside }) => inside).length,
  };
}

export function predictionReport({
  prediction,
  question,
  measured,
  inside,
}: Omit<KeptPrediction, 'shortName'>): PredictionReport {
  const { id, trialId, key, what, value, low, high, basis, at } = prediction;
  const gain = (share: number | null): number | null => (what === 'meanGain' ? percentOrNull(share) : null);
  const thousands = (of: Prediction['what'], one: number | null): number | null =>
    what === of && one !== null ? one / 1000 : null;
  const kilowatts = (watt: number | null): number | null => thousands('peakPower', watt);
  const kilopascals = (pascal: number | null): number | null => thousands('highestBoost', pascal);
  return {
    id,
    trialId,
    question,
    key,
    what,
    gainPercent: gain(value),
    gainPercentLow: gain(low),
    gainPercentHigh: gain(high),
    measuredGainPercent: gain(measured),
    peakPowerKw: kilowatts(value),
    peakPowerKwLow: kilowatts(low),
    peakPowerKwHigh: kilowatts(high),
    measuredPeakPowerKw: kilowatts(measured),
    highestBoostKpa: kilopascals(value),
    highestBoostKpaLow: kilopascals(low),
    highestBoostKpaHigh: kilopascals(high),
    measuredHighestBoostKpa: kilopascals(measured),
    basis,
    at,
    inside,
  };
}
