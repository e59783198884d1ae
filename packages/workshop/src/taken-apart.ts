import { accepted, type Result, refused, remark } from '@pullbook/core/remark';
import type { Trial, TrialCombination } from '@pullbook/core/trial';

/**
 * What a person says of each combination by its key: whether the engine was taken apart for it, coming from the baseline.
 * `null`: told by the parts that changed. Keys that are not named stay as they are.
 */
export type TakenApartSaid = Readonly<Record<string, boolean | null>>;

/** Combinations with what was said put over them. The baseline comes from nothing, so that nothing is said of it. */
export function withTakenApart(
  combinations: readonly TrialCombination[],
  said: TakenApartSaid,
): Result<TrialCombination[]> {
  const [baseline, ...others] = combinations;
  const stray = Object.keys(said).find((key) => !others.some((one) => one.key === key));
  if (stray !== undefined) {
    const may = others.map(({ key, shortName }) => `${key} (${shortName})`).join(', ');
    return refused(
      remark(
        'refusal',
        'taken-apart-key',
        stray === baseline?.key
          ? `Whether the engine was taken apart is said of ${may}, coming from the baseline ${stray}; of the baseline itself there is nothing to say.`
          : `"${stray}" is no combination of this trial. Whether the engine was taken apart can be said of ${may}.`,
      ),
    );
  }
  return accepted(
    combinations.map((one) => {
      const { takenApart: before, ...rest } = one;
      const now = said[one.key] === undefined ? before : said[one.key];
      return now == null ? rest : { ...rest, takenApart: now };
    }),
  );
}

/**
 * Combinations set up anew keep what was said of their engine, as long as the baseline is the same; against another baseline
 * it says nothing, and the remark tells so.
 */
export function keptTakenApart(
  { combinations: before }: Pick<Trial, 'combinations'>,
  now: readonly TrialCombination[],
): Result<TrialCombination[]> {
  const told = before.filter(({ takenApart }) => takenApart != null);
  if (told.length === 0) return accepted([...now]);
  if (before[0]?.combinationId !== now[0]?.combinationId) {
    const names = told.map(({ shortName }) => `"${shortName}"`).join(' and ');
    return accepted(
      [...now],
      [
        remark(
          'caution',
          'taken-apart-of-other-baseline',
          `Whether the engine was taken apart for ${names} was said against the baseline "${before[0]?.shortName}". Against "${now[0]?.shortName}" it is told by the parts that changed, unless you say it anew.`,
        ),
      ],
    );
  }
  return accepted(
    now.map((one) => {
      const same = told.find(({ combinationId }) => combinationId === one.combinationId);
      return same === undefined ? one : { ...one, takenApart: same.takenApart };
    }),
  );
}
