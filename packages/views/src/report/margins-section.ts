import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import type { ShownTable } from '../model.ts';
import { stopLines } from '../plan-page.ts';
import type { ReportBlock, ReportSection } from '../publish/model.ts';
import { wholeTens } from '../showing.ts';
import type { CombinationInTrial } from '../trial-in-view.ts';
import { lines, paragraph } from './answer-section.ts';
import { isOfLimits, saidFindings } from './limits-section.ts';
import type { ReportInView } from './report-in-view.ts';

interface Margin {
  meaning: ChannelMeaning;
  name: string;
  extreme: 'highest' | 'lowest';
  /** Line of the card of stop criteria that it is held against; missing: none. */
  stopId?: string;
}

const MARGINS: readonly Margin[] = [
  { meaning: 'lambda', name: 'Leanest mixture, lambda', extreme: 'highest', stopId: 'lambda' },
  { meaning: 'airFuelRatio', name: 'Leanest mixture, air to fuel', extreme: 'highest' },
  { meaning: 'sparkAdvance', name: 'Most spark advance', extreme: 'highest' },
  { meaning: 'fuelPressure', name: 'Lowest fuel pressure', extreme: 'lowest', stopId: 'fuel-pressure' },
  { meaning: 'boost', name: 'Highest boost', extreme: 'highest', stopId: 'boost' },
  { meaning: 'dischargeTemperature', name: 'Hottest discharge air', extreme: 'highest' },
  { meaning: 'chargeTemperature', name: 'Hottest charge', extreme: 'highest' },
  { meaning: 'exhaustTemperature', name: 'Hottest exhaust', extreme: 'highest', stopId: 'exhaust' },
  { meaning: 'coolantTemperature', name: 'Hottest coolant', extreme: 'highest', stopId: 'coolant' },
  { meaning: 'oilTemperature', name: 'Hottest oil', extreme: 'highest', stopId: 'oil' },
  { meaning: 'oilPressure', name: 'Lowest oil pressure', extreme: 'lowest', stopId: 'oil-pressure' },
  { meaning: 'crankcasePressure', name: 'Highest crankcase pressure', extreme: 'highest' },
  { meaning: 'impellerSpeed', name: 'Fastest impeller', extreme: 'highest', stopId: 'impeller' },
];

/** The extremes that were read in the counted pulls, where a pull is to be ended beside them, and what the rules say. */
export function marginsSection(report: ReportInView): ReportSection {
  const table = marginsTable(report);
  const blocks: ReportBlock[] = [
    ...(table === null
      ? [
          paragraph(
            'Neither mixture, pressures nor temperatures were read with these pulls: how near they came to a limit is not known.',
          ),
        ]
      : [
          { kind: 'table', table } as const,
          paragraph(
            'Read in the counted pulls, at the engine speed beside. “End a pull” is the card of stop criteria for this engine: common practice, no source; makers’ limits go before it. What is not listed was not read.',
            'quiet',
          ),
        ]),
    ...lines(
      'What the rules say of these pulls',
      saidFindings(report.page.findings, (ruleId) => !isOfLimits(ruleId)),
    ),
  ];
  return { id: 'margins', title: 'Margins and findings', blocks };
}

function marginsTable({ view, more }: ReportInView): ShownTable | null {
  const { show, trial, combinations } = view;
  const stops = stopLines(trial, more.engine, show.options);
  const shown = combinations.filter(({ counted }) => counted.length > 0);
  const rows = MARGINS.flatMap(({ meaning, name, extreme, stopId }): ShownTable['rows'] => {
    const { kind } = MEANINGS[meaning];
    const found = shown.map((item) => extremeOf(item, meaning, extreme));
    if (found.every((one) => one === null)) return [];
    const decimals = kind === 'ratio' ? { decimals: 2 } : {};
    const text = (one: (typeof found)[number]) =>
      one === null
        ? 'not read'
        : `${show.quantity(one.value, kind, decimals)} at ${show.speed(wholeTens(one.atRpm))}`;
    const stop = stops.find(({ id }) => id === stopId);
    return [
      {
        name,
        unit: '',
        cells: [...found.map(text), stop === undefined ? '' : `${stop.label.toLowerCase()} ${stop.limit}`],
      },
    ];
  });
  if (rows.length === 0) return null;
  return {
    id: 'margins',
    title: 'Extremes of the counted pulls',
    columns: [
      ...shown.map(({ key, index }) => ({ text: key, combination: index })),
      { text: 'End a pull', combination: null },
    ],
    rows,
  };
}

/** The most extreme figure of the gridded curves of a combination's counted pulls; `null`: none has the channel. */
function extremeOf(
  { counted }: CombinationInTrial,
  meaning: ChannelMeaning,
  extreme: Margin['extreme'],
): { value: number; atRpm: number } | null {
  const sign = extreme === 'highest' ? 1 : -1;
  let most: { value: number; atRpm: number } | null = null;
  for (const {
    view: { curve },
  } of counted) {
    const values = curve?.channels.get(meaning);
    if (!curve || !values) continue;
    for (const [node, value] of values.entries()) {
      if (Number.isFinite(value) && (most === null || sign * value > sign * most.value))
        most = { value, atRpm: curve.engineSpeedRpm[node]! };
    }
  }
  return most;
}
