import type { SpreadUsed } from '@pullbook/core/scatter';
import { thingsChanged } from '@pullbook/core/trial';
import { atMostPerCent, bandText, gainDecimals, leavesOutZero } from './band-text.ts';
import { clearStretches, stretchWords } from './clear-ranges.ts';
import type { TrialPage } from './model.ts';
import { type SaidGain, saidGains } from './said-gain.ts';
import { notSettledWords, settleWords } from './settle-words.ts';
import { spreadSource } from './spread-words.ts';
import { fullName, type TrialInView } from './trial-in-view.ts';
import { counted, inSentence, listed } from './wording.ts';

/** Degrees of freedom below which a spread is little more than a guess. */
const FEW_DEGREES = 8;

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
      `It likely ${verb} power: the 80\u00a0% band (${likely}\u00a0${unit}) leaves out zero, the 95\u00a0% band (${fits}) does not.${settle === '' ? '' : ` ${settle}`}`,
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
    `These two pulls differ by ${show.power(Math.abs(gain.meanPower))}; ${scatter} a repeat of the same engine would differ by up to ${show.power((high - low) / 2)} in 95 of 100 cases.`,
  ];
}

function clearlySaid(said: SaidGain): string[] {
  const stretches = clearStretches(said);
  return ([1, -1] as const).flatMap((sign) => {
    const own = stretches.filter((one) => one.sign === sign).map((one) => stretchWords(said, one));
    return own.length === 0
      ? []
      : [
          `The ${sign === 1 ? 'gain' : 'loss'} is clear ${listed(own)}: there the band for all speeds at once leaves out zero.`,
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
    const furthest = high >= -low ? `${show.power(high)} more` : `${show.power(-low)} less`;
    lines.push(
      `That ${name} ${verb} power.`,
      `That it does nothing: as much as ${furthest} fits these pulls too.`,
    );
  }
  if (verdict.word === 'likely' || verdict.word === 'within-noise') lines.push(notSettledWords(said));
  lines.push(...notClearAt(said), ...notThePeak(view, said), ...notTheRest(said));
  return lines.filter(Boolean);
}

/** Speeds of the window at which no gain and no loss is clear. */
function notClearAt(said: SaidGain): string[] {
  const { gain, show } = said;
  const stretches = clearStretches(said);
  const [only] = stretches;
  if (!only) return gain.verdict?.word === 'clear' ? ['Where it adds: at no single speed is it clear.'] : [];
  if (stretches.length > 1) return ['Anything between those stretches: there it is within the noise.'];
  if (only.reaches[0] && only.reaches[1]) return [];
  if (only.reaches[1]) return [`Anything below ${show.speed(only.fromRpm)}: there it is within the noise.`];
  if (only.reaches[0]) return [`Anything above ${show.speed(only.toRpm)}: there it is within the noise.`];
  return [`Anything outside ${show.speedRange([only.fromRpm, only.toRpm])}: there it is within the noise.`];
}

function notThePeak({ combinations }: TrialInView, { gain, baseline, changed, show }: SaidGain): string[] {
  const peak = gain.band?.peakPower ?? null;
  const peaks = [baseline, changed].flatMap(
    ({ key }) => combinations.find((one) => one.key === key)?.figures?.peakPower ?? [],
  );
  const climbing = peaks.filter(({ stillClimbing }) => stillClimbing).length;
  if (peak === null)
    return climbing === 1
      ? ['What the peak gains: one of the two was still climbing where its pulls end.']
      : ['What the peak gains: it is not known of both.'];
  const lines = leavesOutZero([peak.low, peak.high])
    ? []
    : [
        `That the peak is ${peak.gain >= 0 ? 'higher' : 'lower'}: the highest figures differ by ${show.quantity(peak.gain, 'power', { decimals: 0, sign: true })} (${bandText(show, [peak.low, peak.high])}).`,
      ];
  if (climbing === 2) lines.push('That these are peaks: both were still climbing where the pulls end.');
  return lines;
}

/** What the band rests on that these pulls do not show themselves. */
function notTheRest({ gain, show }: SaidGain): string[] {
  const scatter = gain.band!.scatter;
  const own = scatter.gains.find(({ group }) => group === gain.changedKey);
  const groups = [gain.baselineKey, gain.changedKey];
  const untold = scatter.trends.filter(
    ({ group, state }) => groups.includes(group) && state === 'cannot-tell',
  );
  const lines: string[] = [];
  if (untold.length > 0 || scatter.drift.handling === 'carried')
    lines.push(
      `That neither drift nor heat soak has a part in it: ${
        untold.length > 0
          ? `${listed(untold.map((one) => `${one.group} with ${counted(one.pulls, 'pull')}`))} cannot tell them from scatter`
          : 'the order of the pulls does not let them cancel'
      }. The band allows for them.`,
    );
  const isGuess = (spread: SpreadUsed) =>
    spread.fromRepeats === null || spread.fromRepeats.degreesOfFreedom < FEW_DEGREES;
  if ((own?.parts.setUp ?? 0) > 0 && isGuess(scatter.spreads.setUp))
    lines.push(
      `How far taking apart alone moves this engine: the ${show.perCent(scatter.spreads.setUp.sigma, { decimals: 2 })} reckoned with is ${spreadSource(scatter.spreads.setUp)}, with few returns to a set-up behind it.`,
    );
  if (scatter.spreads.pull.historySetAside)
    lines.push(
      `That this engine repeats as well as others: its pulls scatter more (${show.perCent(scatter.spreads.pull.fromRepeats?.sigma ?? scatter.spreads.pull.sigma, { decimals: 2 })}) than what is known lets expect, so the repeats alone are reckoned with.`,
    );
  return lines;
}
