import type { FitReading, FitResidual, MatchFit } from '@pullbook/core/fit';
import { writeSaid } from '@pullbook/core/quantity';
import type { Said } from '@pullbook/core/remark';
import type { ViewOptions } from '@pullbook/views';
import { AT_THE_EDGE } from './match-points.ts';
import { edgeNumber } from './number.ts';
import { type EdgeRemark, edgeRemarks } from './remark.ts';

/** A fit to boosted pulls as it leaves the program. */
export interface FitReport {
  pullIds: string[];
  /** All that the fit rests on: also pulls of other combinations that were fitted with these. */
  restsOnPullIds: string[];
  parameters: {
    id: string;
    value: number;
    /** One standard deviation. */
    spread: number;
    prior: number;
    priorSpread: number;
    /** Channels that speak of it; empty: it stays at its prior. */
    from: string[];
  }[];
  residuals: {
    pullId: string;
    /** Name of the figure among the points: `boostKpa`. */
    figure: string;
    /** Of temperatures in K, else per cent. */
    rms: number;
    rmsUnit: 'K' | '%';
    points: { engineSpeedRpm: number; measured: number | null; matched: number | null }[];
  }[];
  readings: {
    id: FitReading['id'];
    strength: FitReading['strength'];
    text: string;
    wouldSettle: string | null;
  }[];
  remarks: EdgeRemark[];
}

/** `options`: units of sentences for a person; `null`: SI. */
export function fitReport(fit: MatchFit, options: ViewOptions | null): FitReport {
  const words = ({ text, parts }: Said) => (options === null ? text : writeSaid(text, parts, options));
  return {
    pullIds: fit.pullIds,
    restsOnPullIds: fit.restsOn,
    parameters: fit.parameters.map(({ id, value, spread, prior, from }) => ({
      id,
      value,
      spread,
      prior: prior.value,
      priorSpread: prior.spread,
      from,
    })),
    residuals: fit.residuals.map(residualReport),
    readings: fit.readings.map(({ id, strength, text, wouldSettle }) => ({
      id,
      strength,
      text: words(text),
      wouldSettle: wouldSettle && words(wouldSettle),
    })),
    remarks: edgeRemarks(fit.remarks, null, options),
  };
}

function residualReport({
  pullId,
  figure,
  engineSpeedRpm,
  measured,
  matched,
  rms,
}: FitResidual): FitReport['residuals'][number] {
  const [name, times, plus] = AT_THE_EDGE[figure];
  const isTemperature = plus !== 0;
  const edge = (value: number | undefined) => edgeNumber(value === undefined ? value : value * times + plus);
  return {
    pullId,
    figure: name,
    rms: isTemperature ? rms : 100 * rms,
    rmsUnit: isTemperature ? 'K' : '%',
    points: engineSpeedRpm.map((speed, node) => ({
      engineSpeedRpm: speed,
      measured: edge(measured[node]),
      matched: edge(matched[node]),
    })),
  };
}
