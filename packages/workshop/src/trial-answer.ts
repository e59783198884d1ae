import type { CorrectionId } from '@pullbook/core/air';
import type { Package } from '@pullbook/core/combination';
import { accepted, type Result } from '@pullbook/core/remark';
import { answerTrial, type Trial, type TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { findOne } from './find-one.ts';
import { remembered } from './remembered.ts';

/** For looking only: nothing of it is stored. */
export interface Looking {
  correction?: CorrectionId | undefined;
  averagesWindowRpm?: [low: number, high: number] | undefined;
}

/** A trial of the book by id, beginning of an id, or question. */
export async function trialBy(book: Book, given: string): Promise<Result<Trial>> {
  const trials = (await book.trials()).map((trial) => ({ ...trial, name: trial.question }));
  const found = findOne(trials, given, 'trial');
  if (!found.ok) return found;
  const { name: _, ...trial } = found.value;
  return accepted(trial);
}

/** A trial worked out from its pulls, once for everything it rests on. */
export async function answerOf(book: Book, trial: Trial, looking: Looking = {}): Promise<TrialAnswer> {
  const wanted = new Set(trial.combinations.map((one) => one.combinationId));
  const combinations = (await book.combinations()).filter((one) => wanted.has(one.id));
  const fitted = new Set(combinations.flatMap((one) => one.packageIds));
  const packages: Package[] = (await book.packages()).filter((one) => fitted.has(one.id));
  const named = trial.pulls.map((one) => one.pullId);
  const heads = (await book.pullHeads()).filter((one) => named.includes(one.id));
  const looked = {
    ...trial,
    correction: looking.correction ?? trial.correction,
    averagesWindowRpm: looking.averagesWindowRpm ?? trial.averagesWindowRpm,
  };
  const key = JSON.stringify(['answer', looked, combinations, packages, heads]);
  return remembered(book, key, async () =>
    answerTrial({ trial: looked, combinations, packages, pulls: await book.pulls(named) }),
  );
}
