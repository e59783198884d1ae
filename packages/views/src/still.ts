import type { ChartPanel, StillDescription } from '@pullbook/charts';
import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import type { TrialAnswer } from '@pullbook/core/trial';
import { heldBack } from './audience.ts';
import { pullsText, standardText } from './basis.ts';
import { curvePanel } from './curve-panels.ts';
import { daysText } from './date.ts';
import { engineText, fuelText, superchargerText } from './engine-line.ts';
import { gainPanel } from './gain-panel.ts';
import type { ViewOptions } from './model.ts';
import { answerSentence, atTop, BIG_CHANGE_RATIO, isWithinRepeats, plainText } from './sentence.ts';
import { standardName } from './standard-name.ts';
import { trialTreatmentText } from './treatment-words.ts';
import { boostNote, stackOf } from './trial-chart.ts';
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
 * boost on a supercharged engine; power, torque and gain without one. `signature`: the shop's own name and mark.
 */
export function stillDescription(
  answer: TrialAnswer,
  options: ViewOptions,
  signature: Signature = null,
): StillDescription {
  const view = trialInView(answer, options);
  return {
    headline: headline(view),
    subline: subline(view),
    chart: stackOf(view, stillPanels(view)) ?? emptyChart(view),
    footer: footer(view),
    warning: heldBack(answer).length > 0 ? 'Not for publication' : null,
    signature,
  };
}

/** The change and its figure; the whole sentence where there is no single change. */
function headline(view: TrialInView): string {
  const window = view.comparison?.averagesWindowRpm;
  const [only] = view.gains;
  if (view.gains.length !== 1 || !only || !window) return plainText(answerSentence(view));
  const name = capitalised(only.changed.shortName || only.changed.key);
  const top = atTop(view, only.changed, window);
  if (Math.abs(only.gain.meanPowerRatio) >= BIG_CHANGE_RATIO && top) {
    const step = view.show.quantity(top.changed - top.baseline, 'power', { decimals: 0, sign: true });
    return `${name}: ${step} at ${view.show.speed(top.rpm)}`;
  }
  return `${name}: ${view.show.quantity(only.gain.meanPower, 'power', { decimals: 0, sign: true })} on average`;
}

function subline(view: TrialInView): string {
  const { gains, show, comparison } = view;
  const window = comparison?.averagesWindowRpm;
  const [only] = gains;
  const average =
    only && gains.length === 1 && Math.abs(only.gain.meanPowerRatio) >= BIG_CHANGE_RATIO
      ? `${show.quantity(only.gain.meanPower, 'power', { decimals: 0, sign: true })} on average `
      : '';
  return [
    window && gains.length > 0 ? `${average}from ${show.speedRange(window)}` : '',
    pullsText(view),
    only && gains.length === 1 && isWithinRepeats(view, only.gain, only.changed)
      ? 'smaller than the spread of the repeats'
      : '',
    comparison ? standardName(comparison.correction) : '',
  ]
    .filter(Boolean)
    .map((part, index) => (index === 0 ? capitalised(part) : part))
    .join(' · ');
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
    return [
      power,
      curvePanel(view, {
        ...common,
        meaning: 'boost',
        share: 0.8,
        note: boostNote(view),
        zeroLine: true,
        endValue,
      }),
    ];
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
    [listed(engines), listed(fuels), superchargersText(view), mixtureText(view)],
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

/** A still of a trial without curves says so in its words; its chart has the axis alone. */
function emptyChart(view: TrialInView): StillDescription['chart'] {
  return {
    xTitle: 'Engine speed',
    xUnit: view.show.unit('engineSpeed'),
    xRange: [0, 1],
    xWindow: null,
    panels: [],
    decimalMark: view.show.options.decimalMark,
    alternative: plainText(answerSentence(view)),
  };
}
