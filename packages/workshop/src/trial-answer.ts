import type { CorrectionId } from '@pullbook/core/air';
import type { Package } from '@pullbook/core/combination';
import { answerTrial, type MatchedSide, type Trial, type TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { asOfToday } from './audience.ts';
import { viewerOf } from './pull-views.ts';
import { remembered } from './remembered.ts';
import { historyBeingRead, scatterHistoryOf } from './scatter-history.ts';
import { settingsOf } from './settings.ts';
import { shopReadingOf } from './shop-reading.ts';

/** For looking only: nothing of it is stored. */
export interface Looking {
  correction?: CorrectionId | undefined;
  averagesWindowRpm?: [low: number, high: number] | undefined;
}

/** A trial worked out from its pulls, once for everything it rests on. */
export async function answerOf(
  book: Book,
  trial: Trial,
  looking: Looking = {},
  matched: ReadonlyMap<string, MatchedSide> = new Map(),
): Promise<TrialAnswer> {
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
  const counted = new Set(trial.pulls.flatMap(({ pullId, role }) => (role === 'counted' ? [pullId] : [])));
  const { worthwhileGain: worthwhile, ruleThresholds } = await settingsOf(book);
  const known = {
    history: await scatterHistoryOf(book, {
      cells: heads.flatMap(({ id, cell }) => (counted.has(id) ? [cell] : [])),
      sheets: combinations.map(({ sheet }) => sheet),
      without: named,
    }),
    worthwhile,
    ruleThresholds,
    silenced: await book.silenced([
      `trial ${trial.id}`,
      ...heads.map(({ id }) => `pull ${id}`),
      ...combinations.map(({ id }) => `combination ${id}`),
      ...new Set(heads.flatMap(({ sessionId }) => (sessionId === null ? [] : [`session ${sessionId}`]))),
    ]),
    predictions: await book.predictions([trial.id]),
  };
  const key = JSON.stringify(['answer', looked, combinations, packages, heads, shop, known, [...matched]]);
  const answer = await remembered(book, key, async () =>
    answerTrial({
      trial: looked,
      combinations,
      packages,
      pulls: (await book.pulls(named)).map(asOfToday),
      shop,
      viewed: viewerOf(book),
      matched,
      ...known,
    }),
  );
  const beside = answer.comparison?.gains.some(({ band }) => band !== null)
    ? await historyBeingRead(book)
    : [];
  return beside.length === 0 ? answer : { ...answer, remarks: [...answer.remarks, ...beside] };
}
