import type { TrialAnswer } from '@pullbook/core/trial';
import fc from 'fast-check';
import { type InventedCombination, inventedAnswer } from '../test-answer.ts';
import type { InventedBand } from '../test-band.ts';

/** Names as people give them: none, long, in any script, with what a file name or a drawing might trip over. */
const NAMES = [
  '',
  'base cam',
  '12° longer cam',
  'Nockenwelle mit 12° mehr, größere Düsen',
  'распредвал «спорт»',
  '長いカム',
  'كامة أطول',
  '<b>&"cam"</b>',
  `a ${'very '.repeat(38)}long name`,
];

const WORDS = ['clear', 'likely', 'no-difference', 'within-noise', null] as const;
type Word = (typeof WORDS)[number];

const combination = (words: readonly Word[]) =>
  fc.record({
    shortName: fc.oneof(fc.constantFrom(...NAMES), fc.string({ unit: 'grapheme', maxLength: 200 })),
    pulls: fc.constantFrom(0, 1, 1, 2, 3),
    slope: fc.constantFrom(0.07, 0.07, 0.0701, 0.069, 0.075, 0.11),
    boost: fc.constantFrom(null, 0, 650, 700),
    supercharged: fc.boolean(),
    stillClimbing: fc.boolean(),
    word: fc.constantFrom(...words),
  });

/** Trials with all that can be odd about them: no pull, one, ten combinations, curves on one another, gains of zero; of these verdicts. */
export const trialsWith = (words: readonly Word[]) =>
  fc
    .record({
      sides: fc.array(combination(words), { minLength: 1, maxLength: 10 }),
      window: fc.constantFrom<[number, number]>([3000, 6500], [4000, 6500], [4100, 4400]),
      isSurvey: fc.boolean(),
    })
    .map(({ sides, window, isSurvey }): TrialAnswer => {
      const first = sides[0]!;
      const invented = sides.map(({ slope, boost, word, ...side }): InventedCombination => {
        const gain = (slope - first.slope) * (window[0] + window[1]) * 0.5;
        return {
          ...side,
          power: (rpm) => slope * rpm,
          ...(boost === null ? {} : { boost: (rpm) => (boost === 0 ? 0 : rpm / boost) }),
          ...(word === null ? {} : { sure: sureOf(word, gain) }),
        };
      });
      const pulled = sides.filter(({ pulls }) => pulls > 0).length;
      const state =
        pulled === 0
          ? 'no pulls'
          : isSurvey
            ? 'survey'
            : first.pulls === 0
              ? 'no baseline'
              : pulled === 1
                ? 'one combination'
                : 'answered';
      return inventedAnswer(invented, { window, state });
    });

export const oddTrials = trialsWith(WORDS);

/** A band that goes with its word: only a clear one leaves out zero. */
function sureOf(word: InventedBand['word'], gain: number): InventedBand {
  if (word === 'clear') {
    const reach = Math.abs(gain) * 0.4 + 0.01;
    const clear: InventedBand['clear'] = [{ fromRpm: 5000, toRpm: 6500, sign: gain >= 0 ? 1 : -1 }];
    return { word, mean: [gain - reach, gain + reach], clear };
  }
  const reach = Math.abs(gain) + 5;
  return { word, mean: [gain - reach, gain + reach], noDifferenceLargerThan: 0.009 };
}
