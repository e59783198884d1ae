import type { Comparison } from '@pullbook/core/compare';
import type { SentencePart } from './model.ts';
import { standardName } from './standard-name.ts';
import { counted, listed } from './wording.ts';

/** What a gain rests on, held back at the end of its sentence: `: SAE J1349, 3 pulls against 2, 2 set-ups.` */
export function gainRestsOn(comparison: Comparison, baselineKey: string, changedKey: string): SentencePart[] {
  const pulls = (wanted: string) =>
    comparison.combinations.find(({ key }) => key === wanted)?.pullIds.length ?? 0;
  const words = wordsOf(comparison, pullsAgainst(pulls(baselineKey), pulls(changedKey)));
  return [{ text: ': ' }, { text: `${words}.`, quiet: true }];
}

/** What figures side by side rest on, held back at their end: ` – SAE J1349, A 3 pulls, B 2 and C 2, 3 set-ups.` */
export function listRestsOn(comparison: Comparison | null): SentencePart[] {
  if (comparison === null) return [{ text: '.' }];
  const sides = comparison.combinations.map(({ key, pullIds }) => ({ key, pulls: pullIds.length }));
  return [{ text: ' – ' }, { text: `${wordsOf(comparison, pullsOfEach(sides))}.`, quiet: true }];
}

function wordsOf(comparison: Comparison, pulls: string): string {
  const { standard } = comparison.correction;
  const setUps = comparison.gains.find(({ band }) => band !== null)?.band?.scatter.setUps ?? null;
  return [
    standard === 'observed' ? 'as observed' : standardName(comparison.correction),
    pulls,
    setUps === null ? '' : setUps === 1 ? 'one set-up' : counted(setUps, 'set-up'),
  ]
    .filter(Boolean)
    .join(', ');
}

/** `3 pulls against 2`, `one pull against one` */
function pullsAgainst(baseline: number, changed: number): string {
  return baseline === 1 && changed === 1
    ? 'one pull against one'
    : `${counted(baseline, 'pull')} against ${changed}`;
}

/** `A 3 pulls, B 2 and C 2` */
export function pullsOfEach(sides: readonly { key: string; pulls: number }[]): string {
  return listed(
    sides.map(({ key, pulls }, index) => `${key} ${index === 0 ? counted(pulls, 'pull') : pulls}`),
  );
}
