import { figureOf, percentFigure, speedFigure } from '../quantity/index.ts';
import { joined, type Remark, remark, said } from '../remark/index.ts';
import { type GroupGain, type ScatterComparison, sumOf, type VarianceParts } from '../scatter/index.ts';
import type { ComparedCombination, ComparedInput } from './model.ts';

/** Share of a gain's variance from which a source is named. */
const NAMED_FROM = 0.05;

/** What is to be said of how sure the gains are: what the bands rest on, what widens them, and what would narrow them. */
export function verdictRemarks(scatter: ScatterComparison, baselineKey: string): Remark[] {
  return [
    ...setAside(scatter),
    ...scatter.gains.flatMap((gain) => [
      ...driftCarried(gain, baselineKey),
      ...otherCells(gain, baselineKey),
      ...otherSetUps(gain, scatter, baselineKey),
    ]),
    ...singlePulls(scatter),
    ...plannedLook(scatter.gains),
  ];
}

/** How much of a difference of plain means was drift, or came of unequal set-ups. */
export function shifted(changedKey: string, ratio: number, { drift }: ScatterComparison): Remark {
  if (drift.handling === 'taken-out' && drift.perHour !== null)
    return remark(
      'note',
      'drift-taken-out',
      said`A straight drift of ${percentFigure(drift.perHour, 2)} an hour is taken out of the gain of ${changedKey}: it moves the average by ${percentFigure(ratio, 2)} of power.`,
    );
  return remark(
    'note',
    'weighed-by-set-up',
    said`The pulls of ${changedKey} and its baseline are not shared evenly between set-ups, days and times, so they are weighed by what they share: it moves the gain by ${percentFigure(ratio, 2)} of power.`,
  );
}

/** Pulls whose power is not above zero somewhere in the averages, so that their scatter is no share of it. */
export function powerNotAboveZero(
  inputs: readonly ComparedInput[],
  combinations: readonly ComparedCombination[],
  nodesRpm: Float64Array,
  averaged: readonly number[],
): Remark[] {
  const nameOf = new Map(
    inputs.flatMap(({ pulls }) => pulls.map(({ pull }) => [pull.id, pull.name] as const)),
  );
  return combinations.flatMap((combination) =>
    (combination.channels.get('power')?.pulls ?? []).flatMap(({ pullId, values }) => {
      const node = averaged.find((one) => !(values[one]! > 0));
      if (node === undefined) return [];
      return [
        remark(
          'caution',
          'power-not-above-zero',
          said`"${nameOf.get(pullId) ?? pullId}" has ${figureOf(values[node]!, 'power')} at ${speedFigure(nodesRpm[node]!)}: scatter is a share of power, which must be above zero for it, so no band and no verdict are given. Check its columns, or choose a window without these speeds.`,
        ),
      ];
    }),
  );
}

/** Pulls that had to take their order for their time. */
export function timedByOrder(names: readonly string[]): Remark[] {
  if (names.length === 0) return [];
  return [
    remark(
      'note',
      'timed-by-order',
      `${names.length} pulls have no time of day of their own, so they are taken as a quarter of an hour apart in their order, for the drift. Enter the times to know better.`,
    ),
  ];
}

function setAside({ spreads }: ScatterComparison): Remark[] {
  const named = [
    [spreads.pull, 'pulls of one set-up'],
    [spreads.setUp, 'set-ups'],
    [spreads.day, 'days'],
    [spreads.within, 'single engine speeds within a pull'],
  ] as const;
  return named.flatMap(([spread, what]) =>
    spread.historySetAside && spread.fromRepeats !== null
      ? [
          remark(
            'caution',
            'history-set-aside',
            said`The ${what} scatter by ${percentFigure(spread.fromRepeats.sigma, 2)}, more than what was known before allows, so the band rests on these pulls alone and is wide. Look for the cause: temperatures, fuel, belt, load cell.`,
          ),
        ]
      : [],
  );
}

function driftCarried(gain: GroupGain, baselineKey: string): Remark[] {
  const share = shareOf(gain, 'drift');
  if (share < NAMED_FROM) return [];
  return [
    remark(
      'caution',
      'drift-in-band',
      said`${baselineKey} and ${gain.group} were pulled one after the other, so a drift through the session cannot be told from the gain: it makes ${percentFigure(share)} of what the band is made of. A pull of ${baselineKey} after ${gain.group} would take it out.`,
    ),
  ];
}

function otherCells(gain: GroupGain, baselineKey: string): Remark[] {
  if (shareOf(gain, 'cell') < NAMED_FROM) return [];
  return [
    remark(
      'caution',
      'cells-in-band',
      said`${baselineKey} and ${gain.group} were pulled in different cells. What lies between cells makes ${percentFigure(shareOf(gain, 'cell'))} of what the band is made of; pulls in one cell do without it.`,
    ),
  ];
}

function otherSetUps(gain: GroupGain, { spreads }: ScatterComparison, baselineKey: string): Remark[] {
  const from = [
    ...(shareOf(gain, 'setUp') < NAMED_FROM
      ? []
      : [said`taking apart and putting together (${percentFigure(spreads.setUp.sigma, 2)} each time)`]),
    ...(shareOf(gain, 'day') < NAMED_FROM
      ? []
      : [said`another day (${percentFigure(spreads.day.sigma, 2)})`]),
  ];
  if (from.length === 0) return [];
  const share = shareOf(gain, 'setUp') + shareOf(gain, 'day');
  return [
    remark(
      'note',
      'set-up-in-band',
      said`Between ${baselineKey} and ${gain.group} lies ${joined(from, ' and ')}: ${percentFigure(share)} of what the band is made of. More pulls do not narrow that; another set-up of each would.`,
    ),
  ];
}

function singlePulls({ counts, gains }: ScatterComparison): Remark[] {
  const single =
    gains.length === 0 ? [] : [...counts].flatMap(([key, { pulls }]) => (pulls === 1 ? [key] : []));
  if (single.length === 0) return [];
  return [
    remark(
      'caution',
      'single-pull',
      `Only one pull counts of ${single.join(' and of ')}: its scatter is that of earlier pulls, not of this one. A second pull would show whether it repeats.`,
    ),
  ];
}

function plannedLook(gains: readonly GroupGain[]): Remark[] {
  const look = gains[0]?.look ?? null;
  if (look === null) return [];
  return [
    remark(
      'note',
      'planned-look',
      said`This is look ${look.number} of ${look.of} planned. The 5 % of error is shared between them, ${percentFigure(look.alphaSpent, 1)} up to here, so the band is a little wider than of pulls looked at once.`,
    ),
  ];
}

function shareOf({ parts }: GroupGain, part: keyof VarianceParts): number {
  const whole = sumOf(parts);
  return whole > 0 ? parts[part] / whole : 0;
}
