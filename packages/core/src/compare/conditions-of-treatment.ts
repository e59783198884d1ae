import { lagFigure, lagsInForce, MEANINGS } from '../pull/index.ts';
import { speedRange } from '../quantity/index.ts';
import { joined, type Said, said } from '../remark/index.ts';
import { type CountedPull, textCondition } from './condition.ts';
import type { ConditionDifference } from './model.ts';

/** What a person set about the reading of the pulls; nothing where none was touched. Inertia and bins stand with the reading. */
export function conditionsOfTreatment(pulls: readonly CountedPull[]): ConditionDifference[] {
  const conditions: ConditionDifference[] = [];
  if (pulls.some(({ view }) => view.recipe.windowRpm !== null))
    conditions.push(
      textCondition(pulls, {
        id: 'window-set',
        label: 'Accepted window',
        why: 'A window set by hand may keep rows that would have been cut, and cut rows that would have counted.',
        read: ({ view: { recipe } }) =>
          recipe.windowRpm === null
            ? 'found'
            : said`set by hand, ${speedRange(recipe.windowRpm[0], recipe.windowRpm[1])}`,
      }),
    );
  if (pulls.some((counted) => lagsText(counted) !== NO_LAGS))
    conditions.push(
      textCondition(pulls, {
        id: 'lags',
        label: 'Lags taken out',
        why: 'A channel put back by its lag stands at another engine speed than one left as it was written down.',
        read: lagsText,
      }),
    );
  return conditions;
}

const NO_LAGS = 'none';

function lagsText({ pull, view }: CountedPull): string | Said {
  const lags = lagsInForce(pull, view.recipe).map(
    ([meaning, lag]) => said`${MEANINGS[meaning].label} ${lag < 0 ? '-' : ''}${lagFigure(lag)}`,
  );
  return lags.length === 0 ? NO_LAGS : joined(lags, ', ');
}
