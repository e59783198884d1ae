import type { ChartPanel, StillDescription } from '@pullbook/charts';
import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import type { TrialAnswer } from '@pullbook/core/trial';
import { heldBack } from './audience.ts';
import { standardText } from './basis.ts';
import { curvePanel } from './curve-panels.ts';
import { daysText } from './date.ts';
import { engineText, fuelText, superchargerText } from './engine-line.ts';
import { gainPanel } from './gain-panel.ts';
import { isBig, spokenGain } from './gain-sentence.ts';
import type { ViewOptions } from './model.ts';
import { saidGains } from './said-gain.ts';
import { answerSentence, plainText } from './sentence.ts';
import { standardName } from './standard-name.ts';
import { trialTreatmentText } from './treatment-words.ts';
import { boostNote, stackOf, whatIsDrawn } from './trial-chart.ts';
import {
  type CombinationInTrial,
  countedPulls,
  isInvented,
  type TrialInView,
  trialInView,
} from './trial-in-view.ts';
import { capitalised, listed } from './wording.ts';

/** The shop's own name and mark on its stills. */
export type Signature = StillDescription['signature'];

/**
 * A trial as one picture for a film or a page: few panels, large words, and under them what a doubter asks for. Power and
 * boost on a supercharged engine, with the gain where the change is not big; power, torque and gain without one. `signature`: the shop's own name and mark.
 */
export function stillDescription(
  answer: TrialAnswer,
  options: ViewOptions,
  signature: Signature = null,
): StillDescription {
  const view = trialInView(answer, options);
  return {
    ...words(view),
    chart: chartOf(view),
    footer: footer(view),
    warning: heldBack(answer).length > 0 ? 'Not for publication' : null,
    signature,
  };
}

/**
 * The answer's sentence in two sizes: what is claimed as the headline, the combination by its name since a picture stands
 * alone, and in smaller letters where it holds and what it rests on.
 */
function words(view: TrialInView): { headline: string; subline: string } {
  const said = saidGains(view);
  const [only] = said;
  if (said.length === 1 && only) {
    const { claim, rest } = spokenGain(only, 'by name');
    return { headline: plainText(claim), subline: plainText(rest) };
  }
  const parts = answerSentence(view);
  const restsOn = parts.filter(({ quiet }) => quiet);
  const claim = plainText(parts.filter(({ quiet }) => !quiet));
  return { headline: claim.replace(/ – $/, '.'), subline: capitalised(plainText(restsOn)) };
}

function stillPanels(view: TrialInView): (ChartPanel | null)[] {
  const note = view.comparison ? standardName(view.comparison.correction) : '';
  const common = {
    pulls: false,
    marks: false,
    zeroLine: false,
    labels: 'keys',
    endValue: () => null,
  } as const;
  const power = curvePanel(view, {
    ...common,
    meaning: 'power',
    share: 1.7,
    note,
    labels: 'names',
    endValue: (item) => highestText(view, item),
  });
  if (view.combinations.some(({ figures, supercharged }) => figures && supercharged)) {
    const endValue = (item: CombinationInTrial) => lastText(view, item, 'boost');
    const boost = curvePanel(view, {
      ...common,
      meaning: 'boost',
      share: 0.8,
      note: boostNote(view),
      zeroLine: true,
      endValue,
    });
    // The gain of a big change is the power's own picture; a small one is only seen in a panel of its own.
    return view.gains.every(({ gain }) => isBig(gain))
      ? [power, boost]
      : [power, gainPanel(view, 0.8), boost];
  }
  return [power, curvePanel(view, { ...common, meaning: 'torque', share: 0.9, note }), gainPanel(view, 0.8)];
}

/** `538 hp, still climbing`; `330 hp at 6,260 rpm` */
function highestText({ show }: TrialInView, { figures }: CombinationInTrial): string | null {
  const peak = figures?.peakPower;
  if (!peak) return null;
  return peak.stillClimbing
    ? `${show.quantity(peak.value, 'power', { decimals: 0 })}, still climbing`
    : show.peak(peak, 'power');
}

/** The last figure of a mean, which is where its name stands. */
function lastText(
  { show }: TrialInView,
  { figures }: CombinationInTrial,
  meaning: ChannelMeaning,
): string | null {
  const last = figures?.channels.get(meaning)?.mean.findLast(Number.isFinite);
  return last === undefined ? null : show.quantity(last, MEANINGS[meaning].kind, { decimals: 1 });
}

function footer(view: TrialInView): string[] {
  const built = view.combinations.flatMap(({ combination, figures }) =>
    combination && figures ? [combination] : [],
  );
  const engines = [...new Set(built.map(({ sheet }) => engineText(sheet, view.show.options)))].filter(
    Boolean,
  );
  const fuels = [...new Set(built.map(({ sheet }) => fuelText(sheet)))].filter(Boolean);
  return [
    [listed(engines), listed(fuels), superchargersText(view), boostText(view), mixtureText(view)],
    [
      airText(view),
      standardText(view),
      trialTreatmentText(view),
      daysText(countedPulls(view).map(({ pull }) => pull.recordedAt)),
      isInvented(view) ? 'invented data' : '',
    ],
  ]
    .map((parts) => capitalised(parts.filter(Boolean).join(' · ')))
    .filter(Boolean);
}

/** `centrifugal supercharger`; with the key where only some have one. */
function superchargersText(view: TrialInView): string {
  const shown = view.combinations.filter(({ figures, combination }) => figures && combination);
  const fitted = shown.filter(({ supercharged }) => supercharged);
  const types = [...new Set(fitted.map(({ combination }) => superchargerText(combination!.sheet)))];
  if (types.length === 0) return shown.length > 0 ? 'naturally aspirated' : '';
  return fitted.length === shown.length
    ? listed(types)
    : `${listed(types)} in ${listed(fitted.map(({ key }) => key))}`;
}

/** `boost at the end A 10.4, B 9.3 psi`: a small change has no room for a panel of it. */
function boostText(view: TrialInView): string {
  if (view.gains.every(({ gain }) => isBig(gain))) return '';
  const boosted = view.combinations.flatMap(({ key, figures }) => {
    const last = figures?.channels.get('boost')?.mean.findLast(Number.isFinite);
    return last === undefined ? [] : [{ key, last }];
  });
  if (boosted.length === 0) return '';
  const figures = boosted.map(
    ({ key, last }) => `${key} ${view.show.number(last, 'gaugePressure', { decimals: 1 })}`,
  );
  return `boost at the end ${figures.join(', ')}\u00a0${view.show.unit('gaugePressure')}`;
}

function airText(view: TrialInView): string {
  const temperatures = countedPulls(view).flatMap(({ pull }) => pull.weather?.temperature ?? []);
  return spanText(view, temperatures, 'temperature', 'inlet air ');
}

function mixtureText(view: TrialInView): string {
  const mixtures = view.combinations
    .flatMap(({ figures }) => figures?.averages.get('lambda') ?? [])
    .filter(Number.isFinite);
  return spanText(view, mixtures, 'ratio', 'λ\u00a0');
}

/** `inlet air 76 to 79 °F`; one figure where both ends are shown alike. */
function spanText(
  { show }: TrialInView,
  values: number[],
  kind: 'temperature' | 'ratio',
  lead: string,
): string {
  if (values.length === 0) return '';
  const more = kind === 'ratio' ? { decimals: 2 } : { decimals: 0 };
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const [first, last] = [show.number(low, kind, more), show.quantity(high, kind, more)];
  return first === show.number(high, kind, more) ? `${lead}${last}` : `${lead}${first} to ${last}`;
}

/** Its alternative leaves the sentence to the words round it; a still of a trial without curves has the axis alone. */
function chartOf(view: TrialInView): StillDescription['chart'] {
  const stack = stackOf(view, stillPanels(view));
  if (stack) return { ...stack, alternative: whatIsDrawn(view, stack.panels, stack.xRange) };
  return {
    xTitle: 'Engine speed',
    xUnit: view.show.unit('engineSpeed'),
    xRange: [0, 1],
    xWindow: null,
    panels: [],
    decimalMark: view.show.options.decimalMark,
    alternative: '',
  };
}
