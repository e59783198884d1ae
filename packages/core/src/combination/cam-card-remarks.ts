import { figureOf } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { camFigures } from './cam-card.ts';
import type { CamFigureId, CombinationSheet } from './model.ts';
import { sheetNumber } from './sheet-number.ts';

const DEGREE = Math.PI / 180;

/** A card is rounded to whole degrees; figures may disagree by this much, rad. Common practice, no source. */
const CARD_TOLERANCE = 1 * DEGREE;

/** Same lift for durations and events within this, m. */
const SAME_LIFT = 1e-5;

const PAIRS: readonly { field: string; figure: CamFigureId; atLift: boolean }[] = [
  { field: 'durationIntake', figure: 'eventDurationIntake', atLift: true },
  { field: 'durationExhaust', figure: 'eventDurationExhaust', atLift: true },
  { field: 'intakeCentreline', figure: 'eventIntakeCentreline', atLift: false },
  { field: 'lobeSeparation', figure: 'eventLobeSeparation', atLift: false },
  { field: 'advance', figure: 'advanceAsFitted', atLift: false },
];

/**
 * A card says more than it needs: what is written beside what its events give. Told where they differ by more than a degree;
 * durations only where they hold at the lift of the events.
 */
export function camCardRemarks(sheet: CombinationSheet): Remark[] {
  const figures = new Map(camFigures(sheet).map((figure) => [figure.id, figure.value]));
  return PAIRS.flatMap(({ field, figure, atLift }) => {
    const entered = sheetNumber(sheet, 'cam', field);
    const computed = figures.get(figure) ?? null;
    if (entered === null || computed === null || (atLift && !isSameLift(sheet))) return [];
    if (Math.abs(entered - computed) <= CARD_TOLERANCE * (1 + 1e-9)) return [];
    const degrees = (value: number) => figureOf(value, 'angle');
    const message = said`cam.${field}: entered is ${degrees(entered)}, the rest of the card gives ${degrees(computed)}; they may differ by 1°. Both are kept: look for a slip, for events told at another lift, or for a lobe that is not symmetric.`;
    return [remark('caution', 'cam-card-disagrees', message)];
  });
}

function isSameLift(sheet: CombinationSheet): boolean {
  const events = sheetNumber(sheet, 'cam', 'eventsLift');
  const durations = sheetNumber(sheet, 'cam', 'durationLift');
  return events === null || (durations !== null && Math.abs(events - durations) <= SAME_LIFT);
}
