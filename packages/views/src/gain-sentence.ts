import type { Gain } from '@pullbook/core/compare';
import { atMostPerCent, bandText, gainDecimals } from './band-text.ts';
import { clearWords } from './clear-ranges.ts';
import type { SentencePart } from './model.ts';
import { atTop, type SaidGain } from './said-gain.ts';
import { settleWords } from './settle-words.ts';
import type { Showing } from './showing.ts';

/** From here on a change is big: the figures at the top of the window say more than the average alone. */
export const BIG_CHANGE_RATIO = 0.1;
/** A smaller step of boost than this is within what a gauge and its tap let pass, Pa. Common practice, no source. */
export const BOOST_STEP_WORTH_SAYING = 1700;

/**
 * One gain, as strongly as its verdict allows: the mean over the window with its 95 % band, and where it is clear. From
 * 10 % on both figures at the top of the window join, or on two supercharged combinations what the boost did there.
 * Without a band, nothing of how sure it is.
 */
export function gainSentence(said: SaidGain): SentencePart[] {
  const { gain, show } = said;
  const { band, verdict } = gain;
  const over = `from ${show.speedRange(said.window)}`;
  if (band === null || verdict === null) return withoutBand(said, over);
  const clear = clearWords(said);
  if (verdict.word === 'no-difference') {
    const most = atMostPerCent(show, verdict.noDifferenceLargerThan, verdict.worthwhileRatio);
    return [
      { text: `No difference larger than ${most}`, strong: true },
      { text: ` on average ${over}${clear === '' ? '' : `, yet ${clear}`}.` },
    ];
  }
  if (verdict.word === 'within-noise') {
    const decimals = gainDecimals(show, gain.meanPower, band.meanPower);
    const fits = `${bandText(show, band.meanPower, { decimals })}\u00a0${show.unit('power')}`;
    const settle = settleWords(said);
    return [
      { text: 'Within the noise: ' },
      {
        text: `${show.quantity(gain.meanPower, 'power', { decimals, sign: true })} on average`,
        strong: true,
      },
      {
        text: ` ${over}, but anything from ${fits} fits${clear === '' ? '' : `; yet ${clear}`}.${settle === '' ? '' : ` ${settle}`}`,
      },
    ];
  }
  const claimed = gainDecimals(show, gain.meanPower, band.meanPower, true);
  const likely = verdict.word === 'likely' ? 'likely ' : '';
  const figures = bandText(show, band.meanPower, { decimals: claimed, size: true });
  return [
    { text: `It ${likely}${gain.meanPower >= 0 ? 'adds' : 'costs'} ` },
    { text: `${sized(show, gain, claimed)} on average`, strong: true },
    { text: ` (${figures}) ${over}` },
    ...tail(said, clear),
  ];
}

function withoutBand(said: SaidGain, over: string): SentencePart[] {
  const { gain, show } = said;
  const change: SentencePart[] = isWhole(show, gain.meanPower)
    ? [
        { text: `It ${gain.meanPower >= 0 ? 'adds' : 'costs'} ` },
        { text: `${sized(show, gain, 0)} on average`, strong: true },
        { text: ` ${over}` },
      ]
    : [
        { text: 'It changes power by ' },
        { text: `less than ${oneUnit(show)} on average`, strong: true },
        { text: ` ${over}` },
      ];
  return [...change, ...tail(said, '')];
}

/** What stands after the mean gain, up to the full stop. */
function tail(said: SaidGain, clear: string): SentencePart[] {
  const { gain, show } = said;
  if (Math.abs(gain.meanPowerRatio) >= BIG_CHANGE_RATIO) {
    const top = atTop(said);
    if (top) {
      return [
        { text: ', and ' },
        { text: show.power(Math.abs(top.changed - top.baseline)), strong: true },
        {
          text: ` at ${show.speed(top.rpm)}: ${show.number(top.changed, 'power', { decimals: 0 })} against ${show.number(top.baseline, 'power', { decimals: 0 })}.`,
        },
      ];
    }
  }
  const boost = boostWords(said);
  if (boost !== '') return [{ text: `${clear === '' ? '' : `, ${clear}`}, ${boost}.` }];
  return [{ text: clear === '' ? '.' : `: ${clear}.` }];
}

/** `and takes 1.1 psi off the boost at the top`; '' where there is no step worth saying. */
function boostWords({ gain, show, bothSupercharged }: SaidGain): string {
  if (!bothSupercharged || gain.topBoost === null || Math.abs(gain.topBoost) < BOOST_STEP_WORTH_SAYING)
    return '';
  const step = show.boostStep(gain.topBoost);
  if (gain.topBoost < 0) return `and takes ${step} off the boost at the top`;
  const adds = gain.meanPower >= 0 && isWhole(show, gain.meanPower);
  return adds ? `with ${step} more boost at the top` : `and raises the boost by ${step} at the top`;
}

/** One of several gains against the same baseline, in few words. */
export function clauseOf(show: Showing, gain: Gain, name: string): SentencePart[] {
  const { band, verdict } = gain;
  const verb = gain.meanPower >= 0 ? 'adds' : 'costs';
  if (band === null || verdict === null) {
    return isWhole(show, gain.meanPower)
      ? [{ text: `${name}, ${verb} ` }, { text: sized(show, gain, 0), strong: true }]
      : [{ text: `${name}, changes power by less than ${oneUnit(show)}` }];
  }
  if (verdict.word === 'no-difference') {
    const most = atMostPerCent(show, verdict.noDifferenceLargerThan, verdict.worthwhileRatio);
    return [{ text: `${name}, makes ` }, { text: `no difference larger than ${most}`, strong: true }];
  }
  const decimals = gainDecimals(show, gain.meanPower, band.meanPower, verdict.word !== 'within-noise');
  if (verdict.word === 'within-noise') {
    const fits = `${bandText(show, band.meanPower, { decimals })}\u00a0${show.unit('power')}`;
    return [{ text: `${name}, is ` }, { text: 'within the noise', strong: true }, { text: ` (${fits})` }];
  }
  return [
    { text: `${name}, ${verdict.word === 'clear' ? 'clearly' : 'likely'} ${verb} ` },
    { text: sized(show, gain, decimals), strong: true },
    { text: ` (${bandText(show, band.meanPower, { decimals, size: true })})` },
  ];
}

const sized = (show: Showing, { meanPower }: Gain, decimals: number): string =>
  show.quantity(Math.abs(meanPower), 'power', { decimals });

/** Whether a gain is at least one whole unit as shown. */
function isWhole(show: Showing, watt: number): boolean {
  return /[1-9]/.test(show.number(watt, 'power', { decimals: 0 }));
}

const oneUnit = (show: Showing): string => `1\u00a0${show.unit('power')}`;
