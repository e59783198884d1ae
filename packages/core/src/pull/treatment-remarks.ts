import { speedFigure, speedRange } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { MEANINGS } from './meanings.ts';
import type { GriddedCurve, Pull, Recipe } from './model.ts';
import { askedLags, lagsInForce } from './treatment.ts';
import { lagFigure } from './wording.ts';

/**
 * What a person set about the reading of this pull and is in force, one remark each, so that no figure hides it. Inertia
 * has its own remarks.
 */
export function treatmentRemarks(
  pull: Pull,
  recipe: Recipe,
  kindOfRows: GriddedCurve['kindOfRows'],
): Remark[] {
  const has = new Set(pull.channels.map(({ meaning }) => meaning));
  return [
    ...lagsInForce(pull, recipe).map(([meaning, lag]) =>
      remark(
        'note',
        'lag-set',
        said`${MEANINGS[meaning].label} read ${lagFigure(lag)} ${lag > 0 ? 'earlier' : 'later'} than it was written down: its lag was set by hand.`,
      ),
    ),
    ...askedLags(recipe)
      .filter(([meaning]) => !has.has(meaning))
      .map(([meaning, lag]) =>
        remark(
          'caution',
          'lag-without-channel',
          said`A lag of ${lagFigure(lag)} is set for ${MEANINGS[meaning].label.toLowerCase()}, but the pull has no such channel: nothing is moved. Set it for one that is there, or set it to 0 s.`,
        ),
      ),
    ...(recipe.windowRpm === null
      ? []
      : [
          remark(
            'note',
            'window-set',
            said`Window set by hand to ${speedRange(recipe.windowRpm[0], recipe.windowRpm[1])}: rows outside it are not counted.`,
          ),
        ]),
    ...(kindOfRows === 'samples' && pull.treatment.binWidthRpm === recipe.binWidthRpm
      ? [remark('note', 'bin-width-set', said`Bins set by hand to ${speedFigure(recipe.binWidthRpm)}.`)]
      : []),
    ...(kindOfRows === 'points' && pull.treatment.binWidthRpm !== null
      ? [
          remark(
            'note',
            'bin-width-not-used',
            said`Bins of ${speedFigure(pull.treatment.binWidthRpm)} were set by hand, but the rows are settled points or a table: they stay where they are.`,
          ),
        ]
      : []),
  ];
}
