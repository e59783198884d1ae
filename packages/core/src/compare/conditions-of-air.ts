import { numberFigure } from '../quantity/index.ts';
import { type CountedPull, numberCondition, rangeText, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';
import { standardText } from './one-standard.ts';

/** Standard of the figures, and how much the weather had to be corrected for. */
export function conditionsOfAir(pulls: readonly CountedPull[]): ConditionDifference[] {
  return [
    textCondition(pulls, {
      id: 'standard',
      label: 'Standard of the figures',
      why: 'Between two standards alone lie up to 4 %, for the same pull on the same day (their reference states).',
      read: ({ view }) => standardText(view.correction.standard),
    }),
    numberCondition(pulls, {
      id: 'weather-factor',
      label: 'Weather factor',
      why: 'A factor makes up for air, not for what the air does to charge and oil: more than 0.03 apart is in doubt (common practice, no source).',
      read: ({ view }) => view.correction.factor,
      text: rangeText((factor) => numberFigure(factor, 4)),
      differ: (low, high) => high - low > 0.03,
    }),
  ];
}
