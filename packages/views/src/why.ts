import type { Explanation } from '@pullbook/core/explain';
import { writeSaid } from '@pullbook/core/quantity';
import type { Said } from '@pullbook/core/remark';
import type { ShownExplanation, ViewOptions } from './model.ts';
import { fullName, type TrialInView } from './trial-in-view.ts';

/** Why each gain of the trial came out so; with the combination's name where there are several. */
export function why({ answer, combinations, show }: TrialInView): ShownExplanation[] {
  const { explanations } = answer;
  return explanations.map((one) => {
    const changed = combinations.find(({ key }) => key === one.changedKey);
    const name = explanations.length > 1 && changed !== undefined ? fullName(changed) : '';
    return { ...shownExplanation(one, show.options), name };
  });
}

/** One explanation in the units shown: its sentence, what speaks for it, what is not excluded, what would settle it. */
export function shownExplanation(explanation: Explanation, options: ViewOptions): ShownExplanation {
  const { likeliest, notExcluded, wouldSettle, silent } = explanation;
  const written = (one: Said | null) => (one === null ? '' : writeSaid(one.text, one.parts, options));
  const evidence = (story: typeof likeliest) =>
    (story?.evidence ?? []).map(({ about, text, speaks }) => ({ about, text: written(text), speaks }));
  return {
    key: explanation.changedKey,
    name: '',
    likeliest: likeliest?.id ?? null,
    sentence: written(likeliest?.text ?? silent),
    evidence: evidence(likeliest),
    notMeasured: words(likeliest?.unmeasured ?? []),
    notExcluded: notExcluded.map((story) => ({
      id: story.id,
      text: written(story.text),
      evidence: evidence(story),
      notMeasured: words(story.unmeasured),
    })),
    wouldSettle: written(wouldSettle),
  };
}

/** Two things that one instrument shows are named once. */
const words = (abouts: readonly string[]): string[] => [
  ...new Set(abouts.map((about) => ABOUT_WORDS[about] ?? about)),
];

/** What was not measured, in words. */
const ABOUT_WORDS: Readonly<Record<string, string>> = {
  boost: 'boost at one tap',
  fuelFlow: 'fuel flow',
  airFlow: 'air flow',
  lambda: 'mixture',
  sparkAdvance: 'spark advance',
  chargeTemperature: 'charge temperature',
  chargeTrend: 'charge temperature through the repeats',
  trend: 'power through four repeats',
  impellerSpeed: 'shaft speed',
  pulleyRatio: 'pulley diameters',
  slip: 'shaft speed',
  crossover: 'lower speeds',
  correction: 'standard and weather',
  withoutSupercharger: 'the same change without a supercharger',
};
