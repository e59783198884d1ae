import type { Gain } from '@pullbook/core/compare';
import { atMostPerCent, bandText, gainDecimals } from './band-text.ts';
import { clearWords } from './clear-ranges.ts';
import type { SentencePart } from './model.ts';
import { gainRestsOn } from './rests-on.ts';
import { atTop, type SaidGain } from './said-gain.ts';
import { settleWords } from './settle-words.ts';
import type { Showing } from './showing.ts';
import { asSubject } from './trial-in-view.ts';

/** From here on a change is big: the figures at the top of the window say more than the average alone. */
const BIG_CHANGE_RATIO = 0.1;
/** A smaller step of boost than this is within what a gauge and its tap let pass, Pa. Common practice, no source. */
export const BOOST_STEP_WORTH_SAYING = 1700;

export const isBig = ({ meanPowerRatio }: Gain): boolean => Math.abs(meanPowerRatio) >= BIG_CHANGE_RATIO;

/** One sentence, cut where a headline may end and smaller letters go on. */
export interface SpokenGain {
  /** What is claimed: `It adds 15 hp on average (11 to 19)`. */
  claim: SentencePart[];
  /** Where it holds, and what it rests on, up to the full stop. */
  rest: SentencePart[];
}

/**
 * One gain, as strongly as its verdict allows: the mean over the window with its 95 % band, where it is clear, and what it
 * rests on. From 10 % on both figures at the top of the window join, else on two supercharged combinations what the boost did
 * there. Without a band, nothing of how sure it is.
 *
 * @example It adds 15 hp on average (11 to 19) from 4,000 to 6,500 rpm, clear above 5,000 rpm: SAE J1349, 3 pulls against 2, 2 set-ups.
 */
export function gainSentence(said: SaidGain): SentencePart[] {
  const { claim, rest } = spokenGain(said, null);
  return [...claim, { text: ' ' }, ...rest];
}

/** The same in its two halves. `named`: the combination by its name, for a picture that stands alone. */
export function spokenGain(said: SaidGain, named: 'by name' | null): SpokenGain {
  const { gain, comparison, show } = said;
  const clear = clearWords(said);
  const name = named === null ? null : asSubject(said.changed);
  const from = `from ${show.speedRange(said.window)}`;
  const word = gain.verdict?.word;
  const restsOn = gainRestsOn(comparison, gain.baselineKey, gain.changedKey);
  if (word === 'no-difference')
    return {
      claim: noDifference(said, name),
      rest: [{ text: `${from}${clear === '' ? '' : `, yet ${clear}`}` }, ...restsOn],
    };
  if (word === 'within-noise') {
    const settle = settleWords(said);
    return {
      claim: [
        ...(name === null ? [] : [{ text: `${name} is ` }]),
        { text: name === null ? 'Within the noise' : 'within the noise', strong: true },
      ],
      rest: [
        {
          text: `${from} (${averageInNoise(said)})${clear === '' ? '' : `, yet ${clear}`}${settle === '' ? '' : `; ${settle}`}`,
        },
        ...restsOn,
      ],
    };
  }
  return {
    claim: claimed(said, name),
    rest: [
      { text: [`${from}${topWords(said)}`, clear, boostWords(said)].filter(Boolean).join(', ') },
      ...restsOn,
    ],
  };
}

function noDifference({ gain: { verdict }, show }: SaidGain, name: string | null): SentencePart[] {
  const most = atMostPerCent(show, verdict!.noDifferenceLargerThan, verdict!.worthwhileRatio);
  return name === null
    ? [{ text: `No difference larger than ${most}`, strong: true }, { text: ' on average' }]
    : [
        { text: `${name} makes ` },
        { text: `no difference larger than ${most}`, strong: true },
        { text: ' on average' },
      ];
}

/** `+2 hp on average, −5 to +9` */
function averageInNoise({ gain, show }: SaidGain): string {
  const band = gain.band!.meanPower;
  const decimals = gainDecimals(show, gain.meanPower, band);
  const figure = show.quantity(gain.meanPower, 'power', { decimals, sign: true });
  return `${figure} on average, ${bandText(show, band, { decimals })}`;
}

/** `It likely adds 4 hp on average (−1 to +9)`; without a band its size alone. */
function claimed({ gain, show }: SaidGain, name: string | null): SentencePart[] {
  const subject = name === null ? 'It' : name;
  const { band, verdict } = gain;
  if (band === null && !isWhole(show, gain.meanPower))
    return [
      { text: `${subject} changes power by ` },
      { text: `less than ${oneUnit(show)} on average`, strong: true },
    ];
  const decimals = band === null ? 0 : gainDecimals(show, gain.meanPower, band.meanPower, true);
  return [
    { text: `${subject} ${verdict?.word === 'likely' ? 'likely ' : ''}${verbOf(gain)} ` },
    { text: `${sized(show, gain, decimals)} on average`, strong: true },
    ...(band === null ? [] : [{ text: ` (${bandText(show, band.meanPower, { decimals, size: true })})` }]),
  ];
}

/** ` and 168 hp at 6,500 rpm (496 against 328)`: the top of the window, of a big change; '' of a small one. */
function topWords(said: SaidGain): string {
  const { gain, show } = said;
  const both = isBig(gain) ? atTop(said) : null;
  if (both === null) return '';
  const whole = (watt: number) => show.number(watt, 'power', { decimals: 0 });
  const figures = `${whole(both.changed)} against ${whole(both.baseline)}`;
  const turns = Math.sign(both.changed - both.baseline) === -Math.sign(gain.meanPower);
  const joint = turns ? `but ${gain.meanPower >= 0 ? 'costs' : 'adds'}` : 'and';
  return ` ${joint} ${show.power(Math.abs(both.changed - both.baseline))} at ${show.speed(both.rpm)} (${figures})`;
}

/** `and takes 1.1 psi off the boost at the top`; '' where there is no step worth saying. */
function boostWords({ gain, show, bothSupercharged }: SaidGain): string {
  if (!bothSupercharged || isBig(gain) || gain.topBoost === null) return '';
  if (Math.abs(gain.topBoost) < BOOST_STEP_WORTH_SAYING) return '';
  const step = show.boostStep(gain.topBoost);
  if (gain.topBoost < 0) return `and takes ${step} off the boost at the top`;
  const adds = gain.meanPower >= 0 && isWhole(show, gain.meanPower);
  return adds ? `with ${step} more boost at the top` : `and raises the boost by ${step} at the top`;
}

/** One of several gains against the same baseline, in few words. */
export function clauseOf(show: Showing, gain: Gain, name: string): SentencePart[] {
  const { band, verdict } = gain;
  if (band === null || verdict === null) {
    return isWhole(show, gain.meanPower)
      ? [{ text: `${name} ${verbOf(gain)} ` }, { text: sized(show, gain, 0), strong: true }]
      : [{ text: `${name} changes power by less than ${oneUnit(show)}` }];
  }
  if (verdict.word === 'no-difference') {
    const most = atMostPerCent(show, verdict.noDifferenceLargerThan, verdict.worthwhileRatio);
    return [{ text: `${name} makes ` }, { text: `no difference larger than ${most}`, strong: true }];
  }
  const decimals = gainDecimals(show, gain.meanPower, band.meanPower, verdict.word !== 'within-noise');
  if (verdict.word === 'within-noise') {
    const fits = `${bandText(show, band.meanPower, { decimals })}\u00a0${show.unit('power')}`;
    return [{ text: `${name} is ` }, { text: 'within the noise', strong: true }, { text: ` (${fits})` }];
  }
  return [
    { text: `${name} ${verdict.word === 'clear' ? 'clearly' : 'likely'} ${verbOf(gain)} ` },
    { text: sized(show, gain, decimals), strong: true },
    { text: ` (${bandText(show, band.meanPower, { decimals, size: true })})` },
  ];
}

const verbOf = ({ meanPower }: Gain): string => (meanPower >= 0 ? 'adds' : 'costs');

const sized = (show: Showing, { meanPower }: Gain, decimals: number): string =>
  show.quantity(Math.abs(meanPower), 'power', { decimals });

/** Whether a gain is at least one whole unit as shown. */
function isWhole(show: Showing, watt: number): boolean {
  return /[1-9]/.test(show.number(watt, 'power', { decimals: 0 }));
}

const oneUnit = (show: Showing): string => `1\u00a0${show.unit('power')}`;
