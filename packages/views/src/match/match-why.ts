import { beyondMeasured, type MatchState } from '@pullbook/core/airpath';
import { POWER_PARTS, type PowerPart, splitOfPower, whyBoostMoved } from '@pullbook/core/explain';
import { writeSaid } from '@pullbook/core/quantity';
import { capitalised, listed } from '../wording.ts';
import { bandAt, figureAt, type MatchedInView, type MatchInView, toldSpeed } from './match-in-view.ts';
import {
  figureText,
  matchedName,
  rangeNumbers,
  readsAsNothing,
  type ShownFigure,
  STATE_WORDS,
} from './match-words.ts';

/** More of why the boost and the power moved, a sentence each with its figures and their bands. */
export function matchWhy(view: MatchInView): string[] {
  const { reference, compared } = view;
  const at = toldSpeed(view);
  if (reference === null || at === null) return [];
  const states = view.matched.flatMap((one) => stateLines(view, one));
  if (compared === null) return states;
  return [
    ...whyBoostMoved(reference.curve, compared.curve, at).map(({ text, parts }) =>
      capitalised(writeSaid(text, parts, view.options)),
    ),
    powerSplit(view, reference, compared, at),
    fromTo(view, reference, compared, at, 'boost', 'Boost is'),
    fromTo(view, reference, compared, at, 'airFlow', 'The engine takes'),
    fromTo(view, reference, compared, at, 'manifoldTemperature', 'Its charge is at'),
    fromTo(view, reference, compared, at, 'drivePower', 'The supercharger takes'),
    ...states,
  ].filter((line) => line !== '');
}

const PARTS: Record<PowerPart, string> = {
  manifoldPressure: 'boost',
  manifoldTemperature: 'charge temperature',
  breathing: 'breathing',
  weather: 'weather',
  work: 'spark, mixture and fuel',
  friction: 'friction',
  drive: 'drive of the supercharger',
};

/** `Power, 580 hp to 609 hp at 6,500 rpm: breathing +45 hp, boost −18 hp.` Parts that read as nothing are left out. */
function powerSplit(
  { show }: MatchInView,
  reference: MatchedInView,
  compared: MatchedInView,
  at: number,
): string {
  const side = ({ combination: { input }, curve }: MatchedInView) => ({ input, curve });
  const split = splitOfPower(side(reference), side(compared), at);
  if (split === null) return '';
  const parts = POWER_PARTS.map((part) => ({ part, watt: split.parts[part] }))
    .filter(({ watt }) => !readsAsNothing(show, 'brakePower', watt))
    .sort((one, other) => Math.abs(other.watt) - Math.abs(one.watt))
    .map(({ part, watt }) => `${PARTS[part]} ${figureText(show, 'brakePower', watt, { sign: true })}`);
  const withBand = (watt: number, one: MatchedInView) => {
    const band = rangeNumbers(show, 'brakePower', bandAt(one, one.bands, 'brakePower', at), { decimals: 0 });
    return `${show.power(watt)}${band === '' ? '' : ` (${band})`}`;
  };
  const whole = `Power goes from ${withBand(split.from, reference)} to ${withBand(split.to, compared)} at ${show.speed(at)}`;
  return parts.length === 0 ? '' : `${whole}: ${listed(parts)}.`;
}

function fromTo(
  view: MatchInView,
  reference: MatchedInView,
  compared: MatchedInView,
  at: number,
  figure: ShownFigure,
  lead: string,
): string {
  const { show } = view;
  const [before, after] = [figureAt(reference, figure, at), figureAt(compared, figure, at)];
  const difference = after - before;
  const band = rangeNumbers(show, figure, bandAt(compared, compared.difference, figure, at), {
    isDifference: true,
  });
  const step = readsAsNothing(show, figure, difference)
    ? 'no change'
    : figureText(show, figure, difference, { sign: true, isDifference: true });
  const shown = band === '' ? step : `${step}, 95\u00a0%: ${band}`;
  return `${lead} ${figureText(show, figure, after)} instead of ${figureText(show, figure, before)} at ${show.speed(at)} (${shown}).`;
}

const WORTH_SAYING: readonly MatchState[] = [
  'beyond the measured map',
  'surge risk',
  'surge',
  'choked',
  'no solution',
];

/** Where on the map a combination lies badly, from which engine speed to which. */
function stateLines({ show }: MatchInView, one: MatchedInView): string[] {
  const { state, engineSpeedRpm } = one.curve;
  const isBeyond = beyondMeasured(one.combination.input, one.curve);
  return WORTH_SAYING.flatMap((wanted) => {
    // A worse state hides that the map was not measured there.
    const isSo = wanted === 'beyond the measured map' ? isBeyond : state.map((each) => each === wanted);
    const first = isSo.indexOf(true);
    const last = isSo.lastIndexOf(true);
    if (first < 0) return [];
    const isThroughout = isSo.slice(first, last + 1).every(Boolean);
    const where =
      first === last
        ? `at ${show.speed(engineSpeedRpm[first]!)}`
        : `${isThroughout ? 'from' : 'in places from'} ${show.speedRange([engineSpeedRpm[first]!, engineSpeedRpm[last]!])}`;
    return [`${capitalised(matchedName(one))}: ${STATE_WORDS[wanted]} ${where}.`];
  });
}
