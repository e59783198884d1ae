import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import type { QuantityKind } from '@pullbook/core/quantity';
import { bandText } from './band-text.ts';
import { differenceName } from './gain-panel.ts';
import type { CursorTable } from './model.ts';
import type { TrialInView } from './trial-in-view.ts';

/** Rows beside the chart, in their order: what the panels show and what a doubter asks for next. */
const ROWS: readonly { meaning: ChannelMeaning; name: string; decimals?: number; unit?: string }[] = [
  { meaning: 'power', name: 'Power', decimals: 1 },
  { meaning: 'torque', name: 'Torque', decimals: 1 },
  { meaning: 'boost', name: 'Boost', decimals: 1 },
  { meaning: 'lambda', name: 'Mixture', decimals: 2, unit: 'λ' },
  { meaning: 'airFuelRatio', name: 'Air to fuel', decimals: 1 },
  { meaning: 'chargeTemperature', name: 'Charge' },
  { meaning: 'inletAirTemperature', name: 'Inlet' },
  { meaning: 'oilTemperature', name: 'Oil' },
  { meaning: 'fuelFlow', name: 'Fuel flow' },
];

/**
 * Exact figures at every node that some mean reaches: a column a combination, then one for each difference to the
 * baseline, on the common window only. Differences are taken before rounding.
 */
export function cursorTable(view: TrialInView): CursorTable | null {
  const { comparison, show } = view;
  const powers = view.combinations.flatMap(({ figures }) => figures?.channels.get('power')?.mean ?? []);
  if (!comparison || powers.length === 0) return null;
  const nodes = [...comparison.engineSpeedRpm.keys()].filter((node) =>
    powers.some((mean) => Number.isFinite(mean[node])),
  );
  if (nodes.length === 0) return null;
  const shown = view.combinations.filter(({ figures }) => figures !== null);
  const [low, high] = comparison.commonWindowRpm ?? [1, 0];
  const isCommon = (node: number) =>
    comparison.engineSpeedRpm[node]! >= low && comparison.engineSpeedRpm[node]! <= high;
  const rows = ROWS.flatMap(({ meaning, name, decimals, unit }): CursorTable['rows'] => {
    const means = shown.map(({ figures }) => figures?.channels.get(meaning)?.mean ?? null);
    if (!means.some((mean) => mean?.some(Number.isFinite))) return [];
    const { kind } = MEANINGS[meaning];
    const more = decimals === undefined ? {} : { decimals };
    const own = means.map((mean) => nodes.map((node) => show.number(mean?.[node] ?? Number.NaN, kind, more)));
    const before = view.baseline.figures?.channels.get(meaning)?.mean;
    const differences = view.gains.map(({ changed }) => {
      const after = changed.figures?.channels.get(meaning)?.mean;
      return nodes.map((node) =>
        isCommon(node)
          ? show.number(
              (after?.[node] ?? Number.NaN) - (before?.[node] ?? Number.NaN),
              differenceKind(kind),
              { ...more, sign: true },
            )
          : '',
      );
    });
    return [{ id: meaning, name, unit: unit ?? show.unit(kind), cells: [...own, ...differences] }];
  });
  return {
    at: nodes.map((node) => comparison.engineSpeedRpm[node]!),
    columns: [
      ...shown.map(({ key, index }) => ({ key, combination: index })),
      ...view.gains.map(({ changed }) => ({
        key: differenceName(changed.key, view.baseline.key),
        combination: null,
      })),
    ],
    rows,
    ...bandsAtSpeeds(view, nodes),
    start: startNode(view, nodes),
  };
}

/** Each gain in power with its band for the one speed at which it is read. */
function bandsAtSpeeds({ gains, baseline, show }: TrialInView, nodes: number[]): Pick<CursorTable, 'gains'> {
  const rows = gains.flatMap(({ gain: { power, band }, changed }) => {
    if (band === null) return [];
    const { low, high } = band.pointwise;
    return [
      {
        name: `${differenceName(changed.key, baseline.key)}, 95\u00a0% at this speed`,
        unit: show.unit('power'),
        cells: nodes.map((node) => {
          const range = [low[node] ?? Number.NaN, high[node] ?? Number.NaN] as const;
          if (![power[node] ?? Number.NaN, ...range].every(Number.isFinite)) return '';
          return bandText(show, range, { decimals: 1 });
        }),
      },
    ];
  });
  return rows.length === 0 ? {} : { gains: rows };
}

/** A difference of temperatures has no zero of its own. */
export function differenceKind(kind: QuantityKind): QuantityKind {
  return kind === 'temperature' ? 'temperatureDifference' : kind;
}

/** The cursor starts where the change is largest; without a gain, at the highest power. */
function startNode({ gains, combinations }: TrialInView, nodes: number[]): number {
  const curves =
    gains.length > 0
      ? gains.map(({ gain }) => gain.power)
      : combinations.flatMap(({ figures }) => figures?.channels.get('power')?.mean ?? []);
  let start = 0;
  let largest = -1;
  for (const [place, node] of nodes.entries()) {
    for (const curve of curves) {
      const size = Math.abs(curve[node] ?? Number.NaN);
      if (size > largest) [start, largest] = [place, size];
    }
  }
  return start;
}
