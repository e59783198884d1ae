import { type Combination, type PartChange, SECTIONS } from '../combination/index.ts';
import { type Remark, remark } from '../remark/index.ts';
import { listed } from './listed.ts';
import type { Trial } from './model.ts';

/**
 * What the sheets say of the change: other engines, nothing changed, or more than one thing at once. Lines of one section
 * are one thing (a cam has many figures), and so are the lines of one package.
 */
export function changeRemarks(
  trial: Trial,
  combinationById: ReadonlyMap<string, Combination>,
  changes: Readonly<Record<string, PartChange[]>>,
): Remark[] {
  if (trial.kind === 'survey') return [];
  const baseline = combinationById.get(trial.combinations[0]?.combinationId ?? '');
  return trial.combinations.slice(1).flatMap(({ key, shortName, combinationId }) => {
    const combination = combinationById.get(combinationId);
    const lines = changes[key];
    if (baseline === undefined || combination === undefined || lines === undefined) return [];
    if (combination.engineId !== baseline.engineId)
      return [
        remark(
          'caution',
          'different-engines',
          `${key} (${shortName}) is on another engine than the baseline: the difference is not that of a change. Make it a survey.`,
        ),
      ];
    const things = thingsChanged(lines);
    if (things.length === 0)
      return [
        remark(
          'note',
          'nothing-changed-on-the-sheet',
          `The sheets of ${key} (${shortName}) and the baseline do not differ. If something was changed, enter it on the sheet.`,
        ),
      ];
    if (things.length === 1) return [];
    return [
      remark(
        'caution',
        'more-than-one-change',
        `${countWord(things.length)} things changed at once in ${key} (${shortName}): ${listed(things)}. The gain is that of all together. ` +
          'Pull with one of them alone to tell them apart, or declare a package if they belong together.',
      ),
    ];
  });
}

/** Names of the things changed: the package a line belongs to by declaration, else its section. */
export function thingsChanged(lines: readonly PartChange[]): string[] {
  const titles = new Map(SECTIONS.map(({ id, title }) => [id, title.toLowerCase()]));
  return [...new Set(lines.map((line) => line.packageName ?? titles.get(line.section) ?? line.section))];
}

const countWord = (count: number): string => ['', '', 'Two', 'Three', 'Four', 'Five'][count] ?? `${count}`;
