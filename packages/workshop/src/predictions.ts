import { randomUUID } from 'node:crypto';
import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Prediction } from '@pullbook/core/shop';
import type { Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { type PredictionText, predictionFromText } from './edge/prediction-text.ts';
import { findTrial } from './find-named.ts';
import { answerOf } from './trial-answer.ts';

/** A prediction of the book, with what came out. */
export interface KeptPrediction {
  prediction: Prediction;
  question: string;
  /** Few words of the combination it is about; '' where the trial no longer has it. */
  shortName: string;
  measured: number | null;
  inside: boolean | null;
}

/**
 * Keeps what somebody expects of a combination before it is pulled. After the fact there is none: refused once a pull of it
 * counts in the trial. It is never altered; a slip is undone and predicted anew, while there is no pull.
 */
export async function predict(
  book: Book,
  trialNamed: string,
  said: PredictionText,
  now = new Date(),
): Promise<Result<Prediction>> {
  const found = await findTrial(book, trialNamed);
  if (!found.ok) return found;
  const trial = found.value;
  const key = said.key.trim().toUpperCase();
  const why = whyNotPredicted(trial, key, said);
  if (why) return refused(why);
  const read = predictionFromText(said);
  if (!read.ok) return read;
  const [prediction] = await kept(book, trial, [{ key, ...read.value }], now);
  return accepted(prediction);
}

type Said = Omit<Prediction, 'id' | 'trialId' | 'at'>;

/** Writes predictions of a trial that may be made, as one step: nothing stands in their way by `whyNotPredicted`. */
export async function kept(
  book: Book,
  trial: Trial,
  [first, ...others]: readonly [Said, ...Said[]],
  now: Date,
): Promise<[Prediction, ...Prediction[]]> {
  const made = (said: Said): Prediction => ({
    id: randomUUID(),
    trialId: trial.id,
    ...said,
    at: now.toISOString(),
  });
  const predictions: [Prediction, ...Prediction[]] = [made(first), ...others.map(made)];
  await book.addPrediction(...predictions);
  return predictions;
}

/** Why nothing can be predicted of a combination of a trial; `null`: it can. */
export function whyNotPredicted(trial: Trial, key: string, { gain }: Pick<PredictionText, 'gain'>) {
  const keys = trial.combinations.map((one) => one.key);
  if (!keys.includes(key)) {
    return remark(
      'refusal',
      'unknown-key',
      `The trial has no combination ${key || '""'}. There are: ${keys.join(', ')}.`,
    );
  }
  if (gain && (key === keys[0] || trial.kind === 'survey')) {
    return remark(
      'refusal',
      'no-gain-to-predict',
      trial.kind === 'survey'
        ? 'A survey claims no gain. Predict a peak power, or make it a comparison.'
        : `${key} is the baseline: it has no gain over itself. Predict the gain of another, or its peak power.`,
    );
  }
  const counted = trial.pulls.filter((one) => one.key === key && one.role === 'counted').length;
  if (counted > 0) {
    return remark(
      'refusal',
      'already-pulled',
      `${key} has ${counted} counted pull${counted === 1 ? '' : 's'} in this trial already. What is said after the pull is no prediction.`,
    );
  }
  return null;
}

/** Every prediction of the book, the one made last first, with what came out of its trial. */
export async function keptPredictions(book: Book): Promise<KeptPrediction[]> {
  const predictions = await book.predictions();
  const trials = await book.trialsOf([...new Set(predictions.map(({ trialId }) => trialId))]);
  const known = new Map<string, KeptPrediction>();
  for (const trial of trials) {
    for (const one of (await answerOf(book, trial)).predictions) {
      const { shortName = '' } = trial.combinations.find(({ key }) => key === one.prediction.key) ?? {};
      known.set(one.prediction.id, { ...one, question: trial.question, shortName });
    }
  }
  return predictions.flatMap(({ id }) => known.get(id) ?? []);
}
