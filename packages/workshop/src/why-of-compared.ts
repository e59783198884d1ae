import { type Combination, type Package, type PartChange, whatChanged } from '@pullbook/core/combination';
import type { ComparedBeside, ComparedInput, Comparison } from '@pullbook/core/compare';
import { explainGain } from '@pullbook/core/explain';
import { badgesOf } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import {
  type ShownBadge,
  type ShownExplanation,
  shownBadges,
  shownExplanation,
  type ViewOptions,
} from '@pullbook/views';

const SI: ViewOptions = { units: 'si', decimalMark: '.' };

/** What is known beside the pulls of two sides without a trial: their sheets, what changed between them, what fits together. */
export async function besideOf(
  book: Book,
  inputs: readonly ComparedInput[],
  combinations: ReadonlyMap<string, Combination>,
): Promise<ComparedBeside> {
  const [before, after] = inputs.map((input) => onlyCombination(input, combinations));
  const changes: Record<string, PartChange[]> = {};
  if (before != null && after != null)
    changes.B = whatChanged(before.sheet, after.sheet, movedPackages(await book.packages(), before, after));
  return { combinations, changes, pulls: inputs.flatMap(({ pulls }) => pulls.map(({ pull }) => pull)) };
}

/** A package on both sides did not come or go: what changed inside it is told part by part. */
const movedPackages = (packages: Package[], before: Combination, after: Combination): Package[] =>
  packages.filter(({ id }) => before.packageIds.includes(id) !== after.packageIds.includes(id));

/** The one combination that all pulls of a side are of; `null`: several, or not known. */
function onlyCombination(
  { pulls }: ComparedInput,
  combinations: ReadonlyMap<string, Combination>,
): Combination | null {
  const ids = new Set(pulls.map(({ pull }) => pull.combinationId));
  const [id] = ids;
  return ids.size === 1 && id != null ? (combinations.get(id) ?? null) : null;
}

/** Why the changed pulls differ from the baseline's, and what the comparison can show for itself. */
export function whyOfCompared(
  comparison: Comparison,
  inputs: readonly ComparedInput[],
  beside: ComparedBeside,
  words: ViewOptions | null,
): { explanation: ShownExplanation | null; badges: ShownBadge[] } {
  const [gain] = comparison.gains;
  const sheets = new Map(
    inputs.flatMap((input) => {
      const sheet = onlyCombination(input, beside.combinations)?.sheet;
      return sheet === undefined ? [] : [[input.key, sheet] as const];
    }),
  );
  const counted = inputs.flatMap(({ key, pulls }) => pulls.map((one) => ({ key, ...one })));
  return {
    explanation:
      gain === undefined
        ? null
        : shownExplanation(
            explainGain({
              comparison,
              gain,
              changes: beside.changes[gain.changedKey] ?? null,
              sheets,
              pulls: new Map(beside.pulls.map((pull) => [pull.id, pull])),
            }),
            words ?? SI,
          ),
    badges: shownBadges(badgesOf({ comparison, changes: beside.changes, counted }), words ?? SI),
  };
}
