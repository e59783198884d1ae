import type { CorrectionId } from '@pullbook/core/air';
import type { Package } from '@pullbook/core/combination';
import { answerTrial, type Trial, type TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { asOfToday } from './audience.ts';
import { remembered } from './remembered.ts';
import { shopReadingOf } from './shop-reading.ts';

/** For looking only: nothing of it is stored. */
export interface Looking {
  correction?: CorrectionId | undefined;
  averagesWindowRpm?: [low: number, high: number] | undefined;
}

/** A trial worked out from its pulls, once for everything it rests on. */
export async function answerOf(book: Book, trial: Trial, looking: Looking = {}): Promise<TrialAnswer> {
  const wanted = await Promise.all(trial.combinations.map((one) => book.combination(one.combinationId)));
  const combinations = wanted.filter((one) => one !== null);
  const fitted = new Set(combinations.flatMap((one) => one.packageIds));
  const packages: Package[] = (await book.packages()).filter((one) => fitted.has(one.id));
  const named = trial.pulls.map((one) => one.pullId);
  const heads = (await book.pullHeadsOf(named)).map(asOfToday);
  const shop = await shopReadingOf(book);
  const looked = {
    ...asOfToday(trial),
    correction: looking.correction ?? trial.correction,
    averagesWindowRpm: looking.averagesWindowRpm ?? trial.averagesWindowRpm,
  };
  const key = JSON.stringify(['answer', looked, combinations, packages, heads, shop]);
  return remembered(book, key, async () =>
    answerTrial({
      trial: looked,
      combinations,
      packages,
      pulls: (await book.pulls(named)).map(asOfToday),
      shop,
    }),
  );
}
