import type { ChartDescription } from '@pullbook/charts';
import { type CombinationSheet, isSupercharged } from '@pullbook/core/combination';
import {
  beforeThePull,
  cautionsOf,
  type DesignedPull,
  PLANNING_AID,
  type PlannedEngine,
  type PullPlan,
  type StopCriterion,
  stopCriteria,
} from '@pullbook/core/plan';
import { formatNumber, writeSaid } from '@pullbook/core/quantity';
import type { Remark, Said } from '@pullbook/core/remark';
import type { ScatterHistory } from '@pullbook/core/scatter';
import type { Trial } from '@pullbook/core/trial';
import type { ShownRemark, ViewOptions } from './model.ts';
import { shownRemarks } from './remarks.ts';
import { showingIn } from './showing.ts';
import { counted, listed } from './wording.ts';

/** Everything a plan's page is made from. */
export interface PlanPageInput {
  trial: Trial;
  plan: PullPlan;
  gainRatio: number;
  odds: number;
  /** The baseline first; `sheet`: `null` where it is not in the book. */
  combinations: { key: string; name: string; takenApart: boolean; sheet: CombinationSheet | null }[];
  made: readonly DesignedPull[];
  history: ScatterHistory;
  engine: PlannedEngine;
  /** W; `null` unknown */
  baselinePower: number | null;
  /** Engine speeds that count, and the usual rate of the pulls so far; `null` unknown. */
  windowRpm: readonly [low: number, high: number] | null;
  sweepRateRpmPerS: number | null;
  /** What is lost if the baseline leaves the brake now; `null`: nothing. */
  risk: Remark | null;
  remarks: Remark[];
}

/** A plan as a page shows it, ready to print. */
export interface PlanPage {
  id: string;
  question: string;
  /** What the plan gives, in a sentence. */
  sentence: string;
  reaches: boolean;
  /** For the form, as text. */
  gain: string;
  odds: string;
  /** As kept with the plan; '' none. */
  notes: string;
  pulls: { order: number; key: string; combination: number; name: string }[];
  stays: {
    key: string;
    combination: number;
    name: string;
    pulls: string;
    /** `Take the engine apart and fit it: a new set-up.`; '' where it stays. */
    fitting: string;
    before: string;
  }[];
  facts: { label: string; value: string }[];
  chart: ChartDescription | null;
  start: { label: string; value: string }[];
  stopCriteria: StopCriterion[];
  planningAid: string;
  cautions: string[];
  /** What is lost if the baseline leaves the brake now; '' nothing. */
  risk: string;
  isKept: boolean;
  remarks: ShownRemark[];
}

/** A plan in words, tables and a chart, in the units shown. */
export function planPage(input: PlanPageInput, options: ViewOptions): PlanPage {
  const { trial, plan, gainRatio, odds, combinations, engine, risk, remarks } = input;
  const placeOf = (key: string) => combinations.findIndex((one) => one.key === key);
  const nameOf = (key: string) => combinations[placeOf(key)]!.name;
  return {
    id: trial.id,
    question: trial.question,
    sentence: planSentence(input, options),
    reaches: plan.reaches,
    gain: percentText(gainRatio, options),
    odds: percentText(odds, options, 0),
    notes: trial.plan?.notes ?? '',
    pulls: plan.pulls.map(({ key }, place) => ({
      order: place + 1,
      key,
      combination: placeOf(key),
      name: nameOf(key),
    })),
    stays: plan.stays.map(({ key, count, takenApart }, place) => ({
      key,
      combination: placeOf(key),
      name: nameOf(key),
      pulls: counted(count, 'pull'),
      fitting: takenApart ? 'Take the engine apart and fit it: a new set-up.' : '',
      before: beforeWords(combinations[placeOf(key)]!.sheet, place === 0, takenApart),
    })),
    facts: factsOf(input, options),
    chart: chartOf(input, options),
    start: startLines(engine, options),
    stopCriteria: stopLines(trial, engine, options),
    planningAid: PLANNING_AID,
    cautions: cautionsOf(engine),
    risk: risk === null ? '' : writeSaid(risk.message, risk.parts, options),
    isKept: trial.plan != null,
    remarks: shownRemarks(remarks, options),
  };
}

/** Temperatures a counted pull starts from. */
export function startLines(engine: PlannedEngine, options: ViewOptions): PlanPage['start'] {
  const write = writing(options);
  const before = beforeThePull(engine.isBoosted, true);
  return [
    { label: 'Oil at the start', value: write(before.oil) },
    { label: 'Coolant at the start', value: write(before.coolant) },
    { label: 'From pull to pull', value: `${write(before.alike)} (${before.source})` },
  ];
}

/** Lines of the card as the person left them, else as worked out, in the units shown. */
export function stopLines(trial: Trial, engine: PlannedEngine, options: ViewOptions | null): StopCriterion[] {
  const write = writing(options);
  return (
    trial.plan?.stopCriteria ??
    stopCriteria(engine).map(({ limit, ...line }) => ({ ...line, limit: write(limit) }))
  );
}

const writing =
  (options: ViewOptions | null) =>
  ({ text, parts }: Said): string =>
    options === null ? text : writeSaid(text, parts, options);

/** `4 more pulls, A B B A, show a gain of 2.0 % (6 hp) with 80 % odds.` Said first where the pulls made show it already. */
export function planSentence(
  {
    plan,
    gainRatio,
    odds,
    baselinePower,
  }: Pick<PlanPageInput, 'plan' | 'gainRatio' | 'odds' | 'baselinePower'>,
  options: ViewOptions,
): string {
  const gain = differenceText(gainRatio, baselinePower, options);
  const order = orderWords(plan.pulls.map(({ key }) => key));
  const pulls = counted(plan.pulls.length, plan.made === null ? 'pull' : 'more pull');
  const already =
    plan.made !== null && plan.made <= gainRatio
      ? `The pulls made show a gain of ${gain} with ${percentText(odds, options, 0)} odds already. `
      : '';
  return plan.reaches
    ? `${already}${pulls}, ${order}, show ${already === '' ? `a gain of ${gain}` : 'it'} with ${percentText(plan.oddsReached, options, 0)}${already === '' ? ' odds' : ''}.`
    : `A gain of ${gain} cannot be seen with ${percentText(odds, options, 0)} odds: ${pulls}, ${order}, show it with ${percentText(plan.oddsReached, options, 0)}.`;
}

/** Longer orders are counted, for a row of letters is not read. */
const LONGEST_SPELT = 8;

/** `A B B A`, on one line; of many pulls `3 B, 3 A, 3 B`. */
function orderWords(keys: readonly string[]): string {
  if (keys.length <= LONGEST_SPELT) return keys.join('\u00a0');
  const stays: { key: string; count: number }[] = [];
  for (const key of keys) {
    const last = stays.at(-1);
    if (last?.key === key) last.count += 1;
    else stays.push({ key, count: 1 });
  }
  return stays.map(({ key, count }) => `${count}\u00a0${key}`).join(', ');
}

function beforeWords(sheet: CombinationSheet | null, isFirst: boolean, takenApart: boolean): string {
  const { warmUps, waitMinutes } = beforeThePull(sheet !== null && isSupercharged(sheet), isFirst);
  return [
    ...(warmUps > 0 && (isFirst || takenApart) ? [`${counted(warmUps, 'warm-up')} that never count`] : []),
    ...(waitMinutes === null ? [] : [`wait ${waitMinutes} min before each pull`]),
  ].join('; ');
}

function factsOf(
  { plan, odds, combinations, history, baselinePower, made }: PlanPageInput,
  options: ViewOptions,
): PlanPage['facts'] {
  const text = (ratio: number | null) =>
    ratio === null ? 'nothing can be compared yet' : differenceText(ratio, baselinePower, options);
  const wanted = percentText(odds, options, 0);
  const share = (sigma: number) => percentText(sigma, options, 2);
  return [
    { label: `Smallest difference seen with ${wanted} odds`, value: text(plan.smallestDifference) },
    ...(made.length === 0
      ? []
      : [{ label: `With the ${counted(made.length, 'pull')} made`, value: text(plan.made) }]),
    ...plan.oneMore
      .filter(({ smallestDifference }) => plan.made !== null && smallestDifference !== null)
      .map(({ key, smallestDifference }) => ({
        label: `After one more pull of ${key} (${combinations.find((one) => one.key === key)!.name})`,
        value: text(smallestDifference),
      })),
    {
      label: 'No further pulls in these set-ups get below',
      value: plan.floor === 0 ? 'no floor' : text(plan.floor),
    },
    {
      label: 'Look at the verdict',
      value: `after ${listed(plan.looksAt.map((at) => `${at}`))} counted pulls${plan.looksAt.length > 1 ? '; the looks share the 5 %' : ''}`,
    },
    { label: 'Time it takes', value: `about ${formatNumber(plan.hours, 1, options.decimalMark)} h` },
    {
      label: 'Scatter reckoned with',
      value: `${share(history.pull.sigma)} from pull to pull, ${share(history.setUp.sigma)} from set-up to set-up, drift ${share(history.driftPerHour.sigma)} an hour`,
    },
  ];
}

function chartOf({ plan, gainRatio, odds }: PlanPageInput, options: ViewOptions): ChartDescription | null {
  const points = plan.curve.filter(({ smallestDifference }) => Number.isFinite(smallestDifference));
  if (points.length < 2) return null;
  const x = points.map(({ pullsOfEach }) => pullsOfEach);
  const first = x[0]!;
  const last = x.at(-1)!;
  const inPercent = (ratio: number) => 100 * ratio;
  return {
    xTitle: 'Pulls of each',
    xUnit: '',
    xRange: [first, last],
    xWindow: null,
    xCounts: true,
    decimalMark: options.decimalMark,
    alternative: `Smallest difference that is seen with ${percentText(odds, options, 0)} odds: ${points
      .map((one) => `${percentText(one.smallestDifference, options)} with ${one.pullsOfEach} of each`)
      .join(', ')}.`,
    panels: [
      {
        id: 'smallest',
        title: 'Smallest difference',
        unit: '%',
        note: `${percentText(odds, options, 0)} odds`,
        decimals: 1,
        share: 1,
        zeroLine: false,
        lines: [
          {
            id: 'smallest',
            style: 'ink',
            weight: 'mean',
            x,
            y: points.map(({ smallestDifference }) => inPercent(smallestDifference)),
            label: { key: 'seen', name: '', value: null },
          },
          {
            id: 'asked',
            style: 'ink',
            weight: 'pull',
            x: [first, last],
            y: [inPercent(gainRatio), inPercent(gainRatio)],
            label: { key: 'asked for', name: '', value: null },
          },
        ],
        bands: [],
        marks: [],
      },
    ],
  };
}

/** `2.0 % (6 hp)` */
export function differenceText(ratio: number, power: number | null, options: ViewOptions): string {
  if (!Number.isFinite(ratio)) return 'nothing: the scatter is not known well enough';
  const share = percentText(ratio, options);
  if (power === null) return share;
  return `${share} (${showingIn(options).power(ratio * power)})`;
}

const percentText = (ratio: number, options: ViewOptions, decimals = 1): string =>
  showingIn(options).perCent(ratio, { decimals });
