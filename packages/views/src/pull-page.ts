import type { Combination } from '@pullbook/core/combination';
import { type Channel, MEANINGS, type OriginalFile, type Pull, type PullView } from '@pullbook/core/pull';
import type { Trial } from '@pullbook/core/trial';
import { channelDisplay } from './channel-display.ts';
import { momentText } from './date.ts';
import type { PullPage, SentencePart, ViewOptions } from './model.ts';
import { pullChart, pullCursor } from './pull-chart.ts';
import { conditionsOf } from './pull-conditions.ts';
import { peakText, pullChips } from './pull-row.ts';
import { recordedChart } from './recorded-chart.ts';
import { shownRemarks } from './remarks.ts';
import { type Showing, showingIn } from './showing.ts';
import { spikeLines } from './spike-lines.ts';
import { standardName } from './standard-name.ts';
import { treatmentWords } from './treatment-words.ts';
import { capitalised } from './wording.ts';

export interface PullPageInput {
  pull: Pull;
  view: PullView;
  combination: Combination | null;
  /** Its original file; `null` for a pull entered by hand. */
  file: OriginalFile | null;
  /** Trials that name the pull. */
  trials: Pick<Trial, 'id' | 'question'>[];
}

/** One pull: its highest figures, its curves, and everything as recorded with what was cut and why. */
export function pullPage(
  { pull, view, combination, file, trials }: PullPageInput,
  options: ViewOptions,
): PullPage {
  const show = showingIn(options);
  return {
    id: pull.id,
    name: pull.name,
    headline: headline(pull, view, show),
    chips: pullChips(pull, view),
    basis: basis(pull, view, combination, show),
    chart: pullChart(pull, view, show),
    recorded: recordedChart(pull, view, show),
    cursor: pullCursor(view.curve, show),
    cuts: (view.window?.cuts ?? []).map(({ reason }) => capitalised(reason)),
    spikes: spikeLines(view.spikes, show),
    channels: pull.channels.map((channel) => channelLine(channel, show)),
    channelMeanings: meaningsOf(pull),
    treatment: treatmentOf(pull),
    conditions: conditionsOf(pull, view, show),
    notes: pull.notes.map(({ at, text }) => [momentText(at), text].filter(Boolean).join(': ')),
    events: pull.events.map(({ engineSpeedRpm, text }) =>
      engineSpeedRpm === null ? text : `${show.speed(engineSpeedRpm)}: ${text}`,
    ),
    file: file ? { name: file.name, hash: file.hash } : null,
    remarks: shownRemarks(view.remarks),
    trials: trials.map(({ id, question }) => ({ id, question })),
  };
}

/** `496 hp at 6,500 rpm, still climbing, and 403 lb-ft at 6,180 rpm.` */
function headline(pull: Pull, view: PullView, show: Showing): SentencePart[] {
  const power = peakText(show, pull, view, 'power');
  const torque = peakText(show, pull, view, 'torque');
  if (power === '' && torque === '') return [{ text: 'No power or torque could be taken from this pull.' }];
  return [
    ...(power === '' ? [] : [{ text: power, strong: true as const }]),
    ...(torque === '' ? [] : [{ text: `${power === '' ? '' : '; '}${torque}` }]),
    { text: pull.form === 'summary' ? ` (${pull.origin}).` : '.' },
  ];
}

function basis(pull: Pull, view: PullView, combination: Combination | null, show: Showing): string {
  const { factor, reached } = view.correction;
  const standard = standardName(view.correction);
  const isFactored = reached && factor !== null && view.correction.standard !== 'observed';
  return [
    combination?.name ?? '',
    isFactored ? `${standard}, factor ${show.factor(factor)}` : standard,
    view.window ? `counted from ${show.speedRange(view.window.windowRpm)}` : '',
    view.curve ? gridText(view.curve, show) : '',
    ...treatmentWords(view),
    momentText(pull.recordedAt),
  ]
    .filter(Boolean)
    .join(' · ');
}

function meaningsOf(pull: Pull): PullPage['channelMeanings'] {
  return [...new Set(pull.channels.map(({ meaning }) => meaning))].map((id) => ({
    id,
    label: MEANINGS[id].label,
  }));
}

function treatmentOf({ treatment: { lags, ...rest } }: Pull): PullPage['treatment'] {
  return { lagsS: { ...lags }, ...rest };
}

function gridText({ kindOfRows, binWidthRpm }: NonNullable<PullView['curve']>, show: Showing): string {
  return kindOfRows === 'points' ? 'rows as they are in the file' : `means over ${show.speed(binWidthRpm)}`;
}

function channelLine(channel: Channel, show: Showing): PullPage['channels'][number] {
  const display = channelDisplay(channel, show);
  const finite = channel.values.filter(Number.isFinite);
  const low = finite.reduce((one, other) => Math.min(one, other), Number.POSITIVE_INFINITY);
  const high = finite.reduce((one, other) => Math.max(one, other), Number.NEGATIVE_INFINITY);
  return {
    name: channel.name,
    meaning: channel.meaning === 'other' ? 'not understood, kept' : display.label,
    unit: channel.unit,
    count: finite.length,
    low: finite.length === 0 ? '' : display.text(low),
    high: finite.length === 0 ? '' : display.text(high),
    origin: channel.origin,
  };
}
