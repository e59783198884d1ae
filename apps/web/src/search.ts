/** What stands in the address of a page, read with care: an address may be typed or old. */
import type { CorrectionId } from '@pullbook/core/air';
import type { WhatIfName, WhatIfText } from '@pullbook/views/match';
import { isCorrection } from './view/standards.ts';

type Search = Record<string, unknown>;

const correctionFrom = (value: unknown): CorrectionId | undefined =>
  isCorrection(value) ? value : undefined;

const speedFrom = (value: unknown): number | undefined => {
  const speed = typeof value === 'string' ? Number(value) : value;
  return typeof speed === 'number' && Number.isFinite(speed) && speed > 0 ? speed : undefined;
};

const present = <T extends object>(values: T): T =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as T;

/** The part of a chart that is zoomed to; both or none. */
interface Shown {
  low?: number | undefined;
  high?: number | undefined;
}

/** Numbers of which the first is the lower; a time may be before the start. */
function rangeFrom(low: unknown, high: unknown): [number, number] | null {
  const [from, to] = [low, high].map((value) => (typeof value === 'string' ? Number(value) : value));
  if (typeof from !== 'number' || typeof to !== 'number' || !Number.isFinite(to - from)) return null;
  return from < to ? [from, to] : null;
}

function shownFrom({ low, high }: Search): Shown {
  const range = rangeFrom(low, high);
  return range === null ? {} : { low: range[0], high: range[1] };
}

export const shownRange = ({ low, high }: Shown): [number, number] | null =>
  low === undefined || high === undefined ? null : [low, high];

/** Names separated by commas; one that looks like a number comes as one. */
const listFrom = (value: unknown): string | undefined =>
  (typeof value === 'string' || typeof value === 'number') && value !== '' ? String(value) : undefined;

/** By which standard and over which speeds a trial is looked at. */
export interface LookSearch {
  correction?: CorrectionId | undefined;
  /** r/min; both or none */
  from?: number | undefined;
  to?: number | undefined;
}

export function readLookSearch(search: Search): LookSearch {
  const from = speedFrom(search.from);
  const to = speedFrom(search.to);
  const window = from !== undefined && to !== undefined && from < to ? { from, to } : {};
  return present({ correction: correctionFrom(search.correction), ...window });
}

export interface TrialSearch extends Shown, LookSearch {
  /** Keys of combinations and ids of pulls that the chart does not show, separated by commas. */
  hide?: string | undefined;
}

export function readTrialSearch(search: Search): TrialSearch {
  return present({ ...readLookSearch(search), ...shownFrom(search), hide: listFrom(search.hide) });
}

export interface PresentSearch {
  /** Which step; missing or unknown: the first. */
  step?: string | undefined;
  /** The second window, which shows what the first one does. */
  follow?: 1 | undefined;
}

export function readPresentSearch(search: Search): PresentSearch {
  return present({
    step: typeof search.step === 'string' ? search.step : undefined,
    follow: String(search.follow) === '1' ? (1 as const) : undefined,
  });
}

export interface PullSearch extends Shown {
  correction?: CorrectionId | undefined;
  /** The recording over engine speed; missing: over time. */
  over?: 'speed' | undefined;
  /** Part of the recording that is zoomed to, in what it is over; both or none. */
  recordedLow?: number | undefined;
  recordedHigh?: number | undefined;
  /** Ids of the recorded channels to show, separated by commas; missing: those that mean something. */
  channels?: string | undefined;
}

export function readPullSearch(search: Search): PullSearch {
  const recorded = rangeFrom(search.recordedLow, search.recordedHigh);
  return present({
    correction: correctionFrom(search.correction),
    ...shownFrom(search),
    over: search.over === 'speed' ? ('speed' as const) : undefined,
    ...(recorded === null ? {} : { recordedLow: recorded[0], recordedHigh: recorded[1] }),
    channels: listFrom(search.channels),
  });
}

export interface StartSearch {
  /** Ids of pulls to start with, separated by commas. */
  pulls?: string | undefined;
}

export const readStartSearch = (search: Search): StartSearch =>
  present({ pulls: typeof search.pulls === 'string' ? search.pulls : undefined });

export interface AddSearch {
  /** Combination that the files belong to. */
  combination?: string | undefined;
  /** `last`, or the pull that a new one is like. */
  like?: string | undefined;
}

export const readAddSearch = (search: Search): AddSearch =>
  present({
    combination: typeof search.combination === 'string' ? search.combination : undefined,
    like: typeof search.like === 'string' ? search.like : undefined,
  });

/** Which page of the pulls stands in the list, and by what it was narrowed. */
export interface PullsSearch {
  find?: string | undefined;
  /** `none`: without one. */
  combination?: string | undefined;
  engine?: string | undefined;
  cell?: string | undefined;
  fromDay?: string | undefined;
  toDay?: string | undefined;
  powerFrom?: string | undefined;
  powerTo?: string | undefined;
  boosted?: 'yes' | 'no' | 'unknown' | undefined;
  outcome?: 'completed' | 'aborted' | undefined;
  inTrial?: 'yes' | 'no' | undefined;
  invented?: 'yes' | 'no' | undefined;
  sort?: 'power' | 'name' | undefined;
  page?: number | undefined;
}

/** A text that may have been written like a number. */
const wordsFrom = (value: unknown): string | undefined =>
  (typeof value === 'string' || typeof value === 'number') && `${value}`.trim() !== ''
    ? `${value}`
    : undefined;

const oneOf = <T extends string>(value: unknown, allowed: readonly T[]): T | undefined =>
  allowed.find((one) => one === value);

const pageFrom = (value: unknown): number | undefined => {
  const page = Number(value);
  return Number.isInteger(page) && page > 1 ? page : undefined;
};

export const readPullsSearch = (search: Search): PullsSearch =>
  present({
    find: wordsFrom(search.find),
    combination: wordsFrom(search.combination),
    engine: wordsFrom(search.engine),
    cell: wordsFrom(search.cell),
    fromDay: wordsFrom(search.fromDay),
    toDay: wordsFrom(search.toDay),
    powerFrom: wordsFrom(search.powerFrom),
    powerTo: wordsFrom(search.powerTo),
    boosted: oneOf(search.boosted, ['yes', 'no', 'unknown']),
    outcome: oneOf(search.outcome, ['completed', 'aborted']),
    inTrial: oneOf(search.inTrial, ['yes', 'no']),
    invented: oneOf(search.invented, ['yes', 'no']),
    sort: oneOf(search.sort, ['power', 'name']),
    page: pageFrom(search.page),
  });

export interface TrialsSearch {
  find?: string | undefined;
  page?: number | undefined;
}

export const readTrialsSearch = (search: Search): TrialsSearch =>
  present({ find: wordsFrom(search.find), page: pageFrom(search.page) });

/** Which combinations stand in the list. */
export interface CombinationsSearch {
  find?: string | undefined;
  /** Id of an engine. */
  engine?: string | undefined;
  page?: number | undefined;
}

export const readCombinationsSearch = (search: Search): CombinationsSearch =>
  present({ find: wordsFrom(search.find), engine: wordsFrom(search.engine), page: pageFrom(search.page) });

export interface HistorySearch {
  /** `pull <id>`: only about this. */
  of?: string | undefined;
}

export const readHistorySearch = (search: Search): HistorySearch => present({ of: wordsFrom(search.of) });

/** What is tried on a match, and the part of its chart that is zoomed to. */
export interface MatchSearch extends Shown, WhatIfText {}

const WHAT_IF: Record<WhatIfName, true> = {
  on: true,
  blowerPulleyDiameter: true,
  crankPulleyDiameter: true,
  stepUp: true,
  cooler: true,
  coolerEffectiveness: true,
  coolantTemperature: true,
  altitude: true,
  airPressure: true,
  airTemperature: true,
  moreWork: true,
  fuel: true,
  evaporationCooling: true,
  moreAir: true,
  moreAirFrom: true,
  moreAirTo: true,
};

export const readMatchSearch = (search: Search): MatchSearch =>
  present({
    ...shownFrom(search),
    ...Object.fromEntries(Object.keys(WHAT_IF).map((name) => [name, wordsFrom(search[name])])),
  });

/** Which rung of a ladder is looked at, and the part of its chart that is zoomed to. */
export interface KeptReachSearch extends Shown {
  /** Id of a rung, or `now`: as it is; missing: the first. */
  rung?: string | undefined;
}

export const readKeptReachSearch = (search: Search): KeptReachSearch =>
  present({ ...shownFrom(search), rung: wordsFrom(search.rung) });

/** What is asked of a combination, as it was typed. */
export interface ReachAsk {
  /** With its unit: `520 hp`. */
  power?: string | undefined;
  /** What the power is of; missing: the highest. */
  what?: 'power at a speed' | 'average power' | undefined;
  at?: string | undefined;
  /** `3000 rpm-6500 rpm` */
  window?: string | undefined;
  boostCap?: string | undefined;
  /** Kinds of change that are left out, separated by commas. */
  without?: string | undefined;
  correction?: CorrectionId | undefined;
}

export interface ReachSearch extends KeptReachSearch, ReachAsk {}

export const readReachSearch = (search: Search): ReachSearch =>
  present({
    ...readKeptReachSearch(search),
    power: wordsFrom(search.power),
    what: oneOf(search.what, ['power at a speed', 'average power']),
    at: wordsFrom(search.at),
    window: wordsFrom(search.window),
    boostCap: wordsFrom(search.boostCap),
    without: wordsFrom(search.without),
    correction: correctionFrom(search.correction),
  });

/** What was asked before that stands in the list, and what a new question begins with. */
export interface AskedSearch {
  find?: string | undefined;
  page?: number | undefined;
  /** Combination that is asked of. */
  combination?: string | undefined;
}

export const readAskedSearch = (search: Search): AskedSearch =>
  present({
    find: wordsFrom(search.find),
    page: pageFrom(search.page),
    combination: wordsFrom(search.combination),
  });
