import { thingsChanged } from '@pullbook/core/trial';
import { atMostPerCent, bandText, gainDecimals, leavesOutZero, reachText } from './band-text.ts';
import { stretchesWords, toldStretches } from './clear-ranges.ts';
import type { TrialPage } from './model.ts';
import { notFromTheBand } from './not-from-the-band.ts';
import { type SaidGain, saidGains } from './said-gain.ts';
import { notSettledWords, settleWords } from './settle-words.ts';
import { fullName, type TrialInView } from './trial-in-view.ts';
import { capitalised, inSentence, listed } from './wording.ts';

/** For each gain with a verdict what a careful tester may say in front of an audience, and what not, made from the data. */
export function mayAndMayNot(view: TrialInView): TrialPage['mayAndMayNot'] {
  const said = saidGains(view).filter(({ gain }) => gain.verdict !== null && gain.band !== null);
  return said.map((one) => ({
    key: one.changed.key,
    title: said.length > 1 ? fullName(one.changed) : '',
    may: may(one),
    mayNot: mayNot(view, one),
  }));
}

function may(said: SaidGain): string[] {
  const { gain, show, window } = said;
  const { band, verdict } = gain;
  if (band === null || verdict === null) return [];
  const over = `from ${show.speedRange(window)}`;
  const decimals = gainDecimals(show, gain.meanPower, band.meanPower, verdict.word !== 'within-noise');
  const size = show.quantity(Math.abs(gain.meanPower), 'power', { decimals });
  const unit = show.unit('power');
  const fits = `${bandText(show, band.meanPower, { decimals })}\u00a0${unit}`;
  const verb = gain.meanPower >= 0 ? 'adds' : 'costs';
  const lines: string[] = [];
  if (verdict.word === 'clear') {
    const bounds = bandText(show, band.meanPower, { decimals, size: true });
    lines.push(
      `It ${verb} power: ${size} on average ${over}, and ${bounds}\u00a0${unit} holds the true figure in 95 of 100 comparisons like this one.`,
    );
  }
  if (verdict.word === 'likely') {
    const settle = settleWords(said);
    const likely = bandText(show, band.likelyPower, {
      decimals: gainDecimals(show, gain.meanPower, band.likelyPower, true),
    });
    lines.push(
      `It likely ${verb} power: the 80\u00a0% band (${likely}\u00a0${unit}) leaves out zero, the 95\u00a0% band (${fits}) does not.${settle === '' ? '' : ` ${capitalised(settle)}.`}`,
    );
  }
  if (verdict.word === 'no-difference') {
    const most = atMostPerCent(show, verdict.noDifferenceLargerThan, verdict.worthwhileRatio);
    lines.push(`Whatever it does to the average power ${over}, it is no more than ${most} either way.`);
  }
  if (verdict.word === 'within-noise') {
    lines.push(`The pulls neither show a gain nor rule one out: anything from ${fits} fits them.`);
  }
  lines.push(...onePullEach(said), ...clearlySaid(said), ...peakSaid(said));
  return lines;
}

/** With one pull of each nothing at hand tells the scatter: the figure is weighed against what is known of it. */
function onePullEach({ gain, show }: SaidGain): string[] {
  const { band, verdict } = gain;
  if (band === null || verdict?.pulls.baseline !== 1 || verdict.pulls.changed !== 1) return [];
  const [low, high] = band.meanPower;
  const scatter = band.scatter.fromHistory
    ? 'with this shop’s scatter'
    : 'with the scatter usual in the trade';
  return [
    `These two pulls differ by ${show.power(Math.abs(gain.meanPower))}; ${scatter} a repeat of the same engine would differ by up to ${reachText(show, (high - low) / 2)} in 95 of 100 cases.`,
  ];
}

function clearlySaid(said: SaidGain): string[] {
  return ([1, -1] as const).flatMap((sign) => {
    const where = stretchesWords(said, sign);
    return where === ''
      ? []
      : [
          `The ${sign === 1 ? 'gain' : 'loss'} is clear ${where}: there the band for all speeds at once leaves out zero.`,
        ];
  });
}

function peakSaid({ gain, show }: SaidGain): string[] {
  const peak = gain.band?.peakPower ?? null;
  if (peak === null || !leavesOutZero([peak.low, peak.high])) return [];
  const decimals = gainDecimals(show, peak.gain, [peak.low, peak.high]);
  const figure = show.quantity(Math.abs(peak.gain), 'power', { decimals });
  const bounds = bandText(show, [peak.low, peak.high], { decimals, size: true });
  return [`The highest power measured is ${figure} ${peak.gain >= 0 ? 'more' : 'less'} (${bounds}).`];
}

function mayNot(view: TrialInView, said: SaidGain): string[] {
  const { gain, changed, show } = said;
  const { band, verdict } = gain;
  if (band === null || verdict === null) return [];
  const verb = gain.meanPower >= 0 ? 'adds' : 'costs';
  const name = changed.shortName ? `“${changed.shortName}”` : changed.key;
  const lines: string[] = [];
  const things = thingsChanged(view.answer.changes[changed.key] ?? []).map(inSentence);
  if (things.length > 1)
    lines.push(`That one of them did it: ${listed(things)} changed together, and the figure is that of all.`);
  if (verdict.word === 'likely')
    lines.push(`That it is shown: by the 95\u00a0% band ${name} may just as well do nothing.`);
  if (verdict.word === 'no-difference')
    lines.push('That there is no difference at all: a smaller one than that would not be seen.');
  if (verdict.word === 'within-noise') {
    const [low, high] = band.meanPower;
    const furthest = high >= -low ? `${reachText(show, high)} more` : `${reachText(show, low)} less`;
    lines.push(
      `That ${name} ${verb} power.`,
      `That it does nothing: as much as ${furthest} fits these pulls too.`,
    );
  }
  const notSettled =
    verdict.word === 'likely' || verdict.word === 'within-noise' ? notSettledWords(said) : '';
  lines.push(notSettled, ...notClearAt(said), ...notThePeak(view, said));
  lines.push(...notFromTheBand(said, { saysWhatWouldHelp: notSettled === '' }));
  return lines.filter(Boolean);
}

/** Speeds of the window at which no gain and no loss is clear. */
function notClearAt(said: SaidGain): string[] {
  const { gain, show } = said;
  const told = ([1, -1] as const).flatMap((sign) => toldStretches(said, sign) ?? []);
  const listed = told.flatMap((one) => one.listed);
  const [only] = listed;
  if (told.length === 0)
    return gain.verdict?.word === 'clear'
      ? [
          `Where it ${gain.meanPower >= 0 ? 'adds' : 'costs'}: no stretch of engine speed is clear by the band for all speeds at once.`,
        ]
      : [];
  const there = told.some(({ more }) => more)
    ? 'there it is clear in single places at most'
    : 'there it is within the noise';
  if (!only) return ['A stretch of engine speed: it is clear at single speeds only, which the table has.'];
  if (listed.length > 1) return [`Anything outside those stretches: ${there}.`];
  if (only.reaches[0] && only.reaches[1]) return [];
  if (only.reaches[1]) return [`Anything below ${show.speed(only.fromRpm)}: ${there}.`];
  if (only.reaches[0]) return [`Anything above ${show.speed(only.toRpm)}: ${there}.`];
  if (only.fromRpm === only.toRpm) return [`Anything beside ${show.speed(only.fromRpm)}: ${there}.`];
  return [`Anything outside ${show.speedRange([only.fromRpm, only.toRpm])}: ${there}.`];
}

/** What the highest figures do not let be said; that they are no peaks where both still climb stands among the caveats. */
function notThePeak({ combinations }: TrialInView, { gain, baseline, changed, show }: SaidGain): string[] {
  const peak = gain.band?.peakPower ?? null;
  if (peak === null) {
    const climbing = [baseline, changed].filter(
      ({ key }) => combinations.find((one) => one.key === key)?.figures?.peakPower?.stillClimbing,
    );
    return climbing.length === 1
      ? [`What the peak gains: ${climbing[0]!.key} was still climbing where its pulls end.`]
      : ['What the peak gains: it is not known of both.'];
  }
  if (leavesOutZero([peak.low, peak.high])) return [];
  const figure = show.quantity(peak.gain, 'power', { decimals: 0, sign: true });
  return [
    `That the peak is ${peak.gain >= 0 ? 'higher' : 'lower'}: the highest figures differ by ${figure} (${bandText(show, [peak.low, peak.high])}).`,
  ];
}
