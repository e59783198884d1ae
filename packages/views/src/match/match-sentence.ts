import { slopeWord } from '@pullbook/core/explain';
import { writeSaid } from '@pullbook/core/quantity';
import type { SentencePart } from '../model.ts';
import { capitalised, counted, listed } from '../wording.ts';
import { bandAt, figureAt, type MatchedInView, type MatchInView, toldSpeed } from './match-in-view.ts';
import { figureText, matchedName, rangeNumbers, readsAsNothing } from './match-words.ts';
import { scaledSentence } from './scaled-sentence.ts';

/** Below these, as shares, two figures are spoken of as alike. */
const ALIKE = { impeller: 0.002, air: 0.0005 };

/**
 * What a change does at the engine speed where it does most, and why: air, the compressor's line there, boost, power. Of one
 * combination alone, its highest power and the boost there, after what was scaled for one without a supercharger. Always with what it
 * was computed from.
 *
 * @example B, longer cam, takes 6.1 % more air at 6,000 rpm; the compressor's line falls there, so boost drops 0.8 psi while power rises 28 hp.
 */
export function matchSentence(view: MatchInView): SentencePart[] {
  const { reference, compared, show } = view;
  const [silent] = view.bundle.silent;
  if (reference === null) {
    const none = 'Nothing to match: no combination has a centrifugal supercharger.';
    return [{ text: silent === undefined ? none : writeSaid(silent.message, silent.parts, show.options) }];
  }
  const at = toldSpeed(view);
  if (at === null) {
    const names = listed([reference, ...(compared === null ? [] : [compared])].map(matchedName));
    return [{ text: `No match: ${names} have no engine speed at which the match has a solution.` }];
  }
  const parts =
    compared === null
      ? [...scaledSentence(view), ...alone(view, reference, at)]
      : changed(view, reference, compared, at);
  const speed = show.speed(at);
  return parts.map((part) => ({ ...part, text: part.text.replace('{speed}', speed) }));
}

function alone(view: MatchInView, one: MatchedInView, at: number): SentencePart[] {
  const { show } = view;
  const power = figureAt(one, 'brakePower', at);
  const boost = figureAt(one, 'boost', at);
  const band = rangeNumbers(show, 'brakePower', bandAt(one, one.bands, 'brakePower', at), { decimals: 0 });
  const boostBand = rangeNumbers(show, 'boost', bandAt(one, one.bands, 'boost', at));
  return [
    { text: `${capitalised(matchedName(one))}, should make ` },
    { text: show.power(power), strong: true },
    {
      text: `${inBrackets(band)} at {speed} on ${figureText(show, 'boost', boost)}${inBrackets(boostBand)}.`,
    },
    restsOn([one]),
  ];
}

const inBrackets = (band: string): string => (band === '' ? '' : ` (${band})`);

function changed(
  view: MatchInView,
  reference: MatchedInView,
  compared: MatchedInView,
  at: number,
): SentencePart[] {
  const { show } = view;
  const power = figureAt(compared, 'brakePower', at) - figureAt(reference, 'brakePower', at);
  const boost = figureAt(compared, 'boost', at) - figureAt(reference, 'boost', at);
  const opposed = power * boost < 0 && !readsAsNothing(show, 'boost', boost);
  const range = bandAt(compared, compared.difference, 'brakePower', at);
  const band = rangeNumbers(show, 'brakePower', sizes(range), { decimals: 0, isDifference: true });
  const cause = causeWords(view, reference, compared, at, boost);
  return [
    { text: `${matchedName(compared)}, ${cause} ${opposed ? 'while' : 'and'} power ` },
    ...powerMoves(view, power, range),
    { text: `${inBrackets(band)}.` },
    restsOn([reference, compared]),
  ];
}

/** Of a loss its size, as the sentence has it: `drops 0.8 psi (0.6 to 1.0)`. */
const sizes = (range: readonly [number, number] | null): readonly [number, number] | null =>
  range !== null && range[1] < 0 ? [-range[1], -range[0]] : range;

/** The band holds zero. */
const isOpen = (range: readonly [number, number] | null): boolean =>
  range !== null && range[0] < 0 && range[1] > 0;

/** `rises 28 hp`; where the band holds zero it only may. */
function powerMoves(
  { show }: MatchInView,
  power: number,
  range: readonly [number, number] | null,
): SentencePart[] {
  const size = show.power(Math.abs(power));
  if (!/[1-9]/u.test(size)) return [{ text: 'stays' }];
  const verb = power > 0 ? ['rises', 'may rise'] : ['falls', 'may fall'];
  return [{ text: `${verb[isOpen(range) ? 1 : 0]} ` }, { text: size, strong: true }];
}

/** `takes 6.1 % more air at {speed}; the compressor's line falls there, so boost drops 0.8 psi` */
function causeWords(
  { show }: MatchInView,
  reference: MatchedInView,
  compared: MatchedInView,
  at: number,
  boost: number,
): string {
  const share = (figure: 'impellerSpeedRpm' | 'airFlow') =>
    figureAt(compared, figure, at) / figureAt(reference, figure, at) - 1;
  const impeller = share('impellerSpeedRpm');
  const air = share('airFlow');
  const isSameSpeed = !(Math.abs(impeller) >= ALIKE.impeller);
  const turns = isSameSpeed
    ? ''
    : `turns the impeller ${show.perCent(Math.abs(impeller))} ${impeller > 0 ? 'faster' : 'slower'} and `;
  const takes = !(Math.abs(air) >= ALIKE.air)
    ? 'takes as much air'
    : `takes ${show.perCent(Math.abs(air))} ${air > 0 ? 'more' : 'less'} air`;
  const moves = boostWords(show, boost, bandAt(compared, compared.difference, 'boost', at));
  const slope = (figureAt(reference, 'slopeOfLine', at) + figureAt(compared, 'slopeOfLine', at)) / 2;
  const flow = figureAt(compared, 'correctedFlow', at) / figureAt(reference, 'correctedFlow', at) - 1;
  const line = lineWords(slope);
  if (!isSameSpeed || line === '' || !(Math.abs(flow) >= ALIKE.air))
    return `${turns}${takes} at {speed}: ${moves}`;
  // The line is the reason only where it sends the boost the way it went.
  const isReason =
    slopeWord(slope) === 'flat' ? readsAsNothing(show, 'boost', boost) : slope * flow * boost > 0;
  return `${takes} at {speed}; the compressor's line ${line} there, ${isReason ? 'so ' : 'yet '}${moves}`;
}

function boostWords(
  show: MatchInView['show'],
  boost: number,
  range: readonly [number, number] | null,
): string {
  const band = inBrackets(rangeNumbers(show, 'boost', sizes(range), { isDifference: true }));
  if (readsAsNothing(show, 'boost', boost)) return `boost stays${band}`;
  const verb = isOpen(range) ? ['may rise', 'may drop'] : ['rises', 'drops'];
  return `boost ${verb[boost > 0 ? 0 : 1]} ${show.boostStep(boost)}${band}`;
}

/** What the speed line does with more flow; '' where it is not known. */
function lineWords(slope: number): string {
  if (!Number.isFinite(slope)) return '';
  return { falls: 'falls', flat: 'is flat', rises: 'still rises' }[slopeWord(slope)];
}

/** What it was computed from, held back. */
export function restsOn(matched: readonly MatchedInView[]): SentencePart {
  const origins = new Set(matched.map(({ combination: { input } }) => input.baseline.origin));
  const from = {
    measured: 'naturally aspirated pulls',
    scaled: 'a scaled baseline, not a measured one',
    given: 'the baseline that was given',
  };
  const fitted = new Set(matched.flatMap(({ combination: { fit } }) => fit?.pullIds ?? []));
  const isFitted = fitted.size > 0;
  return {
    text: ` Computed from ${listed([...origins].map((origin) => from[origin]))}${isFitted ? `, fitted to ${counted(fitted.size, 'boosted pull')}` : ', not fitted to a boosted pull'}.`,
    quiet: true,
  };
}
