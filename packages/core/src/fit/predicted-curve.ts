import type { AirState } from '../air/index.ts';
import type { FigureBand, MatchBands, MatchCurve, MatchFigure } from '../airpath/index.ts';
import type { PredictedCurve, PredictedFigure } from './model.ts';

/** What a match foretells, to be kept before the pull: power and boost over engine speed with their bands. */
export function predictedCurve(
  curve: MatchCurve,
  bands: MatchBands['cases'][number],
  air: Pick<AirState, 'pressure' | 'temperature'>,
): PredictedCurve {
  const nodes = curve.engineSpeedRpm.flatMap((_, node) =>
    isWhole(curve, bands, 'brakePower', node) && isWhole(curve, bands, 'boost', node) ? [node] : [],
  );
  const figure = (name: MatchFigure): PredictedFigure => ({
    value: nodes.map((node) => curve.figures[name][node]!),
    low: nodes.map((node) => bands[name].low[node]!),
    high: nodes.map((node) => bands[name].high[node]!),
  });
  return {
    engineSpeedRpm: nodes.map((node) => curve.engineSpeedRpm[node]!),
    power: figure('brakePower'),
    boost: figure('boost'),
    air: { pressure: air.pressure, temperature: air.temperature },
  };
}

function isWhole(
  curve: MatchCurve,
  bands: Record<MatchFigure, FigureBand>,
  name: MatchFigure,
  node: number,
): boolean {
  const { low, high } = bands[name];
  return [curve.figures[name][node], low[node], high[node]].every(Number.isFinite);
}

/** One figure of a prediction with its band. */
export interface ForetoldFigure {
  value: number;
  low: number;
  high: number;
  /** r/min */
  atRpm: number;
}

/** The highest of a predicted figure and where, with the band at that speed; `null` of an empty curve. */
export function highestOf(
  curve: PredictedCurve,
  { value, low, high }: PredictedFigure,
): ForetoldFigure | null {
  if (value.length === 0) return null;
  const node = value.reduce((best, one, place) => (one > value[best]! ? place : best), 0);
  return { value: value[node]!, low: low[node]!, high: high[node]!, atRpm: curve.engineSpeedRpm[node]! };
}
