import { driveFigures } from '@pullbook/core/airpath';
import { unitFor } from '@pullbook/core/quantity';
import type { MatchPage } from '../match-model.ts';
import type { Showing } from '../showing.ts';
import { bandAt, figureAt, type MatchInView } from './match-in-view.ts';
import { figureText, rangeNumbers } from './match-words.ts';

const DEGREE = unitFor('°', 'angle')!;
const METRES_A_SECOND = unitFor('m/s', 'speed')!;
const FEET_A_SECOND = unitFor('ft/s', 'speed');

/** Pulleys, impeller, belt: of what is tried, else of what is compared, at the highest engine speed that is matched. */
export function driveFacts(view: MatchInView): MatchPage['drive'] {
  const { show, compared, reference } = view;
  const subject = compared ?? reference;
  const rpm = subject?.curve.engineSpeedRpm.findLast((one) =>
    Number.isFinite(figureAt(subject, 'drivePower', one)),
  );
  if (subject === null || rpm === undefined) return [];
  const { drive, compressor } = subject.combination.input;
  const diameter = compressor.map.isDiameterAssumed ? null : compressor.map.wheelExitDiameter;
  const drivePower = figureAt(subject, 'drivePower', rpm);
  const figures = driveFigures(drive, { engineSpeedRpm: rpm, drivePower, wheelExitDiameter: diameter });
  const band = rangeNumbers(show, 'drivePower', bandAt(subject, subject.bands, 'drivePower', rpm));
  const isTop = `at ${show.speed(rpm)}`;
  const share = drivePower / figureAt(subject, 'brakePower', rpm);
  const line = (label: string, value: string | null) => (value === null ? [] : [{ label, value }]);
  const limit = drive.maximumImpellerSpeedRpm;
  return [
    ...line('Turns of the impeller for one of the crankshaft', ratio(show, drive.pulleyRatio * drive.stepUp)),
    ...line('Pulley ratio and step-up', `${ratio(show, drive.pulleyRatio)} × ${ratio(show, drive.stepUp)}`),
    ...line('Creep and slip reckoned with', show.perCent(drive.slip)),
    ...line(`Impeller ${isTop}`, show.speed(figures.impellerSpeedRpm)),
    ...line(`Tip speed ${isTop}`, figures.tipSpeed === null ? null : tipSpeed(show, figures.tipSpeed)),
    ...line(
      'Impeller at the engine’s limit and margin, without slip',
      figures.highestImpellerSpeedRpm === null
        ? 'no engine speed limit is on the sheet'
        : `${show.speed(figures.highestImpellerSpeedRpm)}, at ${show.speed((drive.engineSpeedLimitRpm ?? 0) + drive.overRevMarginRpm)}`,
    ),
    ...line(
      'Highest impeller speed the maker allows',
      limit === null ? 'not on the sheet' : limitText(show, limit, figures.limitUsed),
    ),
    ...line(
      `Drive power ${isTop}`,
      `${figureText(show, 'drivePower', drivePower)}${band === '' ? '' : ` (${band})`}, ${show.perCent(share, { decimals: 0 })} of the brake power`,
    ),
    ...line(`Drive torque ${isTop}`, show.quantity(figures.crankTorque, 'torque', { decimals: 1 })),
    ...line(
      `Belt pull, tight less slack side, ${isTop}`,
      figures.beltPull === null ? null : force(show, figures.beltPull),
    ),
    ...line(
      'Wrap about the blower pulley',
      drive.wrapAngle === null
        ? null
        : show.quantity(drive.wrapAngle, 'angle', { unit: DEGREE, decimals: 0 }),
    ),
    ...line(
      'Grip of the belt used, by the trade’s table',
      figures.gripUsed === null ? null : show.perCent(figures.gripUsed, { decimals: 0 }),
    ),
  ];
}

const ratio = (show: Showing, value: number): string => show.number(value, 'ratio', { decimals: 2 });

function tipSpeed(show: Showing, value: number): string {
  const isUs = show.options.units === 'us' && FEET_A_SECOND !== null;
  return show.quantity(value, 'speed', { unit: isUs ? FEET_A_SECOND : METRES_A_SECOND, decimals: 0 });
}

function limitText(show: Showing, limit: number, used: number | null): string {
  if (used === null) return show.speed(limit);
  return `${show.speed(limit)}: ${show.perCent(used, { decimals: 0 })} of it is used`;
}

const NEWTON_A_POUND_FORCE = 4.4482216152605;

/** The kinds of quantity have no force; a belt's pull is the only one that is shown. */
function force(show: Showing, newton: number): string {
  const isUs = show.options.units === 'us';
  const number = show.number(isUs ? newton / NEWTON_A_POUND_FORCE : newton, 'ratio', { decimals: 0 });
  return `${number}\u00a0${isUs ? 'lbf' : 'N'}`;
}
