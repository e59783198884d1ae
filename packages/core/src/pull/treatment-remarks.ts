import { type Remark, remark } from '../remark/index.ts';
import { MEANINGS } from './meanings.ts';
import type { GriddedCurve, Pull, Recipe } from './model.ts';
import { askedLags, lagsInForce } from './treatment.ts';
import { lagText, numberText, speedText } from './wording.ts';

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
        `${MEANINGS[meaning].label} read ${lagText(lag)} ${lag > 0 ? 'earlier' : 'later'} than it was written down: its lag was set by hand.`,
      ),
    ),
    ...askedLags(recipe)
      .filter(([meaning]) => !has.has(meaning))
      .map(([meaning, lag]) =>
        remark(
          'caution',
          'lag-without-channel',
          `A lag of ${lagText(lag)} is set for ${MEANINGS[meaning].label.toLowerCase()}, but the pull has no such channel: nothing is moved. Set it for one that is there, or set it to 0 s.`,
        ),
      ),
    ...(recipe.windowRpm === null
      ? []
      : [
          remark(
            'note',
            'window-set',
            `Window set by hand to ${numberText(recipe.windowRpm[0], 0)}-${speedText(recipe.windowRpm[1])}: rows outside it are not counted.`,
          ),
        ]),
    ...(kindOfRows === 'samples' && pull.treatment.binWidthRpm === recipe.binWidthRpm
      ? [remark('note', 'bin-width-set', `Bins set by hand to ${speedText(recipe.binWidthRpm)}.`)]
      : []),
    ...(kindOfRows === 'points' && pull.treatment.binWidthRpm !== null
      ? [
          remark(
            'note',
            'bin-width-not-used',
            `Bins of ${speedText(pull.treatment.binWidthRpm)} were set by hand, but the rows are settled points or a table: they stay where they are.`,
          ),
        ]
      : []),
  ];
}
