import type { Prediction } from '@pullbook/core/shop';
import type { TrialAnswer } from '@pullbook/core/trial';
import { momentText } from './date.ts';
import type { ViewOptions } from './model.ts';
import { type Showing, showingIn } from './showing.ts';

/** A prediction in words, beside what came out. */
export interface ShownPrediction {
  id: string;
  key: string;
  /** `Average power +3.0 % (+1.0 % to +5.0 %)` */
  said: string;
  basis: string;
  /** `16 March 2026 10:42` */
  at: string;
  /** `+2.4 %, inside`; `not pulled yet` */
  cameOut: string;
  outcome: 'inside' | 'outside' | 'open';
}

const NAMES: Record<Prediction['what'], string> = {
  meanGain: 'Average power',
  peakPower: 'Peak power',
  highestBoost: 'Highest boost',
};

/** What was predicted of a trial, and of which combinations something still can be. */
export interface TrialPredictions {
  lines: ShownPrediction[];
  /** Combinations without a counted pull; the baseline has no gain to predict. */
  open: { key: string; shortName: string; isBaseline: boolean }[];
}

/** A prediction with what came out; `null`: nothing yet. */
export interface PredictionMeasured {
  prediction: Prediction;
  measured: number | null;
  inside: boolean | null;
}

/** Every prediction of a book, and how they held. */
export interface PredictionLedger {
  lines: (ShownPrediction & { trialId: string; question: string; about: string })[];
  /** `3 of 4 inside their bands so far.` */
  tally: string;
}

export function trialPredictions(answer: TrialAnswer, options: ViewOptions): TrialPredictions {
  const { trial } = answer;
  const counted = new Set(trial.pulls.flatMap(({ key, role }) => (role === 'counted' ? [key] : [])));
  const baseline = trial.kind === 'survey' ? null : trial.combinations[0]?.key;
  return {
    lines: answer.predictions.map((one) => shownPrediction(one, showingIn(options))),
    open: trial.combinations
      .filter(({ key }) => !counted.has(key))
      .map(({ key, shortName }) => ({
        key,
        shortName,
        isBaseline: key === baseline || trial.kind === 'survey',
      })),
  };
}

export function predictionLedger(
  kept: readonly (PredictionMeasured & { question: string; shortName: string })[],
  options: ViewOptions,
): PredictionLedger {
  const show = showingIn(options);
  const known = kept.filter(({ inside }) => inside !== null);
  const inside = known.filter((one) => one.inside === true).length;
  return {
    lines: kept.map((one) => ({
      ...shownPrediction(one, show),
      trialId: one.prediction.trialId,
      question: one.question,
      about: one.shortName === '' ? one.prediction.key : `${one.prediction.key}, ${one.shortName}`,
    })),
    tally:
      kept.length === 0
        ? 'Nothing was predicted yet.'
        : known.length === 0
          ? 'None has come out yet.'
          : `${inside} of ${known.length} inside ${known.length === 1 ? 'its band' : 'their bands'} so far.`,
  };
}

function shownPrediction(
  { prediction, measured, inside }: PredictionMeasured,
  show: Showing,
): ShownPrediction {
  const { id, key, what, value, low, high, basis, at } = prediction;
  const figure = (one: number): string =>
    what === 'meanGain'
      ? show.perCent(one, { sign: true })
      : what === 'peakPower'
        ? show.power(one)
        : show.quantity(one, 'gaugePressure');
  const name = NAMES[what];
  return {
    id,
    key,
    said: `${name} ${figure(value)} (${figure(low)} to ${figure(high)})`,
    basis,
    at: momentText(at),
    cameOut:
      measured === null
        ? 'not measured yet'
        : `${figure(measured)}, ${inside ? 'inside' : 'outside'} the band`,
    outcome: inside === null ? 'open' : inside ? 'inside' : 'outside',
  };
}
