import type { Combination } from '@pullbook/core/combination';
import {
  type Cell,
  type Channel,
  cellRemarks,
  MEANINGS,
  type OriginalFile,
  type Pull,
  type PullView,
} from '@pullbook/core/pull';
import { writeSaid } from '@pullbook/core/quantity';
import { type Finding, remarksBeside } from '@pullbook/core/rule';
import type { Trial } from '@pullbook/core/trial';
import { audienceWords } from './audience.ts';
import { channelDisplay } from './channel-display.ts';
import { momentText } from './date.ts';
import { findingGroups } from './findings.ts';
import type { PullPage, SentencePart, ViewOptions } from './model.ts';
import { pullChart, pullCursor } from './pull-chart.ts';
import { conditionsOf, isWidthOfShop } from './pull-conditions.ts';
import { listView, peakText, pullChips } from './pull-row.ts';
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
  /** The described cell that the pull names; `null`: none. */
  cell: Cell | null;
  /** What the rules say of it and of its session. */
  findings?: readonly Finding[];
}

/** One pull: its highest figures, its curves, and everything as recorded with what was cut and why. */
export function pullPage(
  { pull, view, combination, file, trials, cell, findings = [] }: PullPageInput,
  options: ViewOptions,
): PullPage {
  const show = showingIn(options);
  return {
    id: pull.id,
    name: pull.name,
    headline: headline(pull, view, show),
    chips: pullChips(pull, listView(view)),
    basis: basis(pull, view, combination, show),
    chart: pullChart(pull, view, show),
    recordedRows: pull.channels[0]?.values.length ?? 0,
    cursor: pullCursor(view.curve, show),
    cuts: (view.window?.cuts ?? []).map(({ reason, parts }) =>
      capitalised(writeSaid(reason, parts, options)),
    ),
    spikes: spikeLines(view.spikes, show),
    channels: pull.channels.map((channel) => channelLine(channel, show)),
    channelMeanings: meaningsOf(pull),
    treatment: treatmentOf(pull),
    shopBinWidthRpm: isWidthOfShop(view) ? view.curve!.binWidthRpm : null,
    conditions: conditionsOf(pull, view, show, cell),
    audience: { ...pull.audience, words: audienceWords(pull.audience) },
    notes: pull.notes.map(({ at, text }) => [momentText(at), text].filter(Boolean).join(': ')),
    events: pull.events.map(({ engineSpeedRpm, text }) =>
      engineSpeedRpm === null ? text : `${show.speed(engineSpeedRpm)}: ${text}`,
    ),
    file: file ? { name: file.name, hash: file.hash } : null,
    findings: findingGroups(findings, namesOf(pull), options),
    remarks: shownRemarks(remarksBeside([...view.remarks, ...cellRemarks(pull, cell)], findings), options),
    trials: trials.map(({ id, question }) => ({ id, question })),
  };
}

/** The page's own pull is not named again. */
const namesOf = ({ sessionId }: Pull): ReadonlyMap<string, string> =>
  new Map(sessionId === null ? [] : [[`session ${sessionId}`, 'the session']]);

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

function gridText({ kindOfRows, binWidthRpm, count }: NonNullable<PullView['curve']>, show: Showing): string {
  if (kindOfRows === 'samples') return `means over ${show.speed(binWidthRpm)}`;
  return count.every((rows) => rows > 1) ? 'means of held speeds' : 'rows as they are in the file';
}

function channelLine(channel: Channel, show: Showing): PullPage['channels'][number] {
  const display = channelDisplay(channel, show);
  let count = 0;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of channel.values) {
    if (!Number.isFinite(value)) continue;
    count += 1;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  return {
    name: channel.name,
    meaning: channel.meaning === 'other' ? 'not understood, kept' : display.label,
    unit: channel.unit,
    count,
    low: count === 0 ? '' : display.text(low),
    high: count === 0 ? '' : display.text(high),
    origin: channel.origin,
  };
}
