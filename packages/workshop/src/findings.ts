import type { CorrectionId } from '@pullbook/core/air';
import type { Combination } from '@pullbook/core/combination';
import type { ComparedInput, Comparison } from '@pullbook/core/compare';
import { defaultRecipe, type Pull, type PullView } from '@pullbook/core/pull';
import {
  type Finding,
  findingsOfComparison,
  findingsOfPull,
  findingsOfSession,
  findingsOfSheet,
  type RuleThresholds,
  withSilenced,
} from '@pullbook/core/rule';
import type { Book } from '@pullbook/store';
import { matchOfCombination } from './match/match-bundle.ts';
import { viewsOf } from './pull-views.ts';
import { settingsOf } from './settings.ts';

/** Beyond so many pulls a session is not looked at as a whole: nobody makes as many in a day. */
const MOST_IN_SESSION = 60;

/** What the rules say of a pull, seen as it is, and of the session it belongs to; silenced ones last. */
export async function findingsAboutPull(
  book: Book,
  { pull, view, combination }: { pull: Pull; view: PullView; combination: Combination | null },
): Promise<Finding[]> {
  const { ruleThresholds: thresholds } = await settingsOf(book);
  const own = await ofPull(book, pull, view, { combination, thresholds });
  const subjects = [`pull ${pull.id}`];
  if (pull.sessionId === null) return withSilenced(own, await book.silenced(subjects));
  subjects.push(`session ${pull.sessionId}`);
  const ofSession = await sessionFindings(book, pull.sessionId, view.correction.asked, thresholds);
  return withSilenced([...own, ...ofSession], await book.silenced(subjects));
}

/** A belt that the trend of boost asks about is held against the match fitted to the pull, where there is one. */
async function ofPull(
  book: Book,
  pull: Pull,
  view: PullView,
  { combination, thresholds }: { combination: Combination | null; thresholds: RuleThresholds },
): Promise<Finding[]> {
  const sheet = combination?.sheet ?? null;
  const byItself = findingsOfPull(pull, view, { sheet, thresholds });
  if (combination === null || !byItself.some(({ ruleId }) => ruleId === 'V13')) return byItself;
  const match = await matchOfCombination(book, combination.id);
  const fit = match.ok ? (match.value.combinations[0]?.fit ?? null) : null;
  return fit === null ? byItself : findingsOfPull(pull, view, { sheet, thresholds, fit });
}

/** What the rules say of a combination's sheet; silenced ones last. */
export async function findingsAboutCombination(book: Book, { id, sheet }: Combination): Promise<Finding[]> {
  const { ruleThresholds } = await settingsOf(book);
  const subject = `combination ${id}`;
  return withSilenced(findingsOfSheet(sheet, subject, ruleThresholds), await book.silenced([subject]));
}

/** What the rules say of a comparison that is no trial, and of its pulls; nothing can be silenced of it as a whole. */
export async function findingsOfCompared(
  book: Book,
  {
    comparison,
    inputs,
    combinations,
  }: {
    comparison: Comparison;
    inputs: readonly ComparedInput[];
    combinations: ReadonlyMap<string, Combination>;
  },
): Promise<Finding[]> {
  const { ruleThresholds: thresholds } = await settingsOf(book);
  const compared = inputs.flatMap((one) => one.pulls);
  const pulls = new Map(compared.map(({ pull }) => [pull.id, pull] as const));
  const ofPulls = compared.flatMap(({ pull, view }) =>
    findingsOfPull(pull, view, {
      sheet: combinations.get(pull.combinationId ?? '')?.sheet ?? null,
      thresholds,
    }),
  );
  const ofAll = findingsOfComparison(comparison, { subject: 'comparison', pulls, thresholds });
  return withSilenced(
    [...ofAll, ...ofPulls],
    await book.silenced([...pulls.keys()].map((id) => `pull ${id}`)),
  );
}

/** Its pulls are found by day and cell, for a book of ten thousand must not be read to say what one day did. */
async function sessionFindings(
  book: Book,
  sessionId: string,
  correction: CorrectionId,
  thresholds: RuleThresholds,
): Promise<Finding[]> {
  const session = (await book.sessions()).find(({ id }) => id === sessionId);
  if (session === undefined) return [];
  const { day, cell } = session;
  const query = {
    cell,
    fromDay: day,
    toDay: day,
    sort: 'newest',
    offset: 0,
    limit: MOST_IN_SESSION,
  } as const;
  const { pulls, total } = await book.findPulls(query);
  const heads = pulls.map(({ head }) => head).filter((head) => head.sessionId === sessionId);
  if (heads.length < 2 || total > MOST_IN_SESSION) return [];
  const recipe = defaultRecipe(correction);
  const views = await viewsOf(book, heads, recipe);
  return findingsOfSession(
    sessionId,
    heads.map((pull, index) => ({ pull, view: views[index]! })),
    thresholds,
  );
}
