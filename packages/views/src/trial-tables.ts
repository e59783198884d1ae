import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { observedHighest } from './caveats.ts';
import { differenceKind } from './cursor-table.ts';
import { differenceName } from './gain-panel.ts';
import type { ShownTable } from './model.ts';
import { wholeTens } from './showing.ts';
import type { CombinationInTrial, TrialInView } from './trial-in-view.ts';

const columnOf = ({ key, index }: CombinationInTrial): ShownTable['columns'][number] => ({
  text: key,
  combination: index,
});
const withFigures = (view: TrialInView) => view.combinations.filter(({ figures }) => figures !== null);

/** Highest figures of the mean curves, each over its own window, with observed power where it was corrected. */
export function peaksTable(view: TrialInView): ShownTable | null {
  const shown = withFigures(view);
  if (!shown.some(({ figures }) => figures?.peakPower || figures?.peakTorque)) return null;
  const { show } = view;
  const row = (name: string, unit: string, cell: (item: CombinationInTrial) => string) => ({
    name,
    unit,
    cells: shown.map(cell),
  });
  const place = (rpm: number | undefined) =>
    rpm === undefined ? '' : show.number(wholeTens(rpm), 'engineSpeed');
  const rows = [
    row('Highest power', show.unit('power'), ({ figures }) =>
      show.number(figures?.peakPower?.value ?? Number.NaN, 'power'),
    ),
    row('Speed of the highest power', show.unit('engineSpeed'), ({ figures }) =>
      place(figures?.peakPower?.atRpm),
    ),
    row('Power still climbing there', '', ({ figures }) =>
      figures?.peakPower ? (figures.peakPower.stillClimbing ? 'yes' : 'no') : '',
    ),
    row('Highest torque', show.unit('torque'), ({ figures }) =>
      show.number(figures?.peakTorque?.value ?? Number.NaN, 'torque'),
    ),
    row('Speed of the highest torque', show.unit('engineSpeed'), ({ figures }) =>
      place(figures?.peakTorque?.atRpm),
    ),
  ];
  const applied = view.comparison?.correction;
  if (applied?.reached && applied.standard !== 'observed') {
    rows.push(
      row('Highest power as observed, mean of the pulls', show.unit('power'), (item) =>
        show.number(observedHighest(item) ?? Number.NaN, 'power'),
      ),
    );
  }
  return { id: 'peaks', title: 'Highest figures', columns: shown.map(columnOf), rows };
}

const AVERAGED: readonly { meaning: ChannelMeaning; decimals?: number; unit?: string }[] = [
  { meaning: 'power', decimals: 1 },
  { meaning: 'torque', decimals: 1 },
  { meaning: 'boost', decimals: 1 },
  { meaning: 'lambda', decimals: 3, unit: 'λ' },
  { meaning: 'chargeTemperature' },
  { meaning: 'inletAirTemperature' },
  { meaning: 'oilTemperature' },
  { meaning: 'fuelFlow' },
];

/** Means over the averages' window, their differences, and the scatter of the repeats. */
export function averagesTable(view: TrialInView): ShownTable | null {
  const { comparison, show, gains, baseline } = view;
  const window = comparison?.averagesWindowRpm;
  const shown = withFigures(view);
  if (!window || shown.length === 0) return null;
  const rows = AVERAGED.flatMap(({ meaning, decimals, unit }): ShownTable['rows'] => {
    const average = (item: CombinationInTrial) => item.figures?.averages.get(meaning) ?? Number.NaN;
    if (!shown.some((item) => Number.isFinite(average(item)))) return [];
    const { kind, label } = MEANINGS[meaning];
    const more = decimals === undefined ? {} : { decimals };
    const differences = gains.flatMap(({ gain, changed }) => {
      const ratio = meaning === 'power' ? show.perCent(gain.meanPowerRatio, { sign: true, decimals: 2 }) : '';
      return [
        show.number(average(changed) - average(baseline), differenceKind(kind), { ...more, sign: true }),
        ratio,
      ];
    });
    return [
      {
        name: label,
        unit: unit ?? show.unit(kind),
        cells: [...shown.map((item) => show.number(average(item), kind, more)), ...differences],
      },
    ];
  });
  if (rows.length === 0) return null;
  rows.push({
    name: 'Scatter of the repeats, one standard deviation',
    unit: '',
    cells: [
      ...shown.map(({ figures }) =>
        figures?.repeatSpread == null ? '' : show.perCent(figures.repeatSpread, { decimals: 2 }),
      ),
      ...gains.flatMap(() => ['', '']),
    ],
  });
  const differences = gains.flatMap(({ changed }) => {
    const name = differenceName(changed.key, baseline.key);
    return [
      { text: name, combination: null },
      { text: `${name}, %`, combination: null },
    ];
  });
  return {
    id: 'averages',
    title: `Averages from ${show.speedRange(window)}`,
    columns: [...shown.map(columnOf), ...differences],
    rows,
  };
}

/** Power and torque at whole 500 r/min. */
export function atSpeedsTable(view: TrialInView): ShownTable | null {
  const { comparison, show, gains, baseline } = view;
  const shown = withFigures(view);
  if (!comparison || shown.length === 0) return null;
  const nodes = [...comparison.engineSpeedRpm.keys()].filter(
    (node) => comparison.engineSpeedRpm[node]! % 500 === 0,
  );
  const meanOf = (item: CombinationInTrial, meaning: ChannelMeaning, node: number) =>
    item.figures?.channels.get(meaning)?.mean[node] ?? Number.NaN;
  const cellsOf = (meaning: 'power' | 'torque', node: number) => [
    ...shown.map((item) => show.number(meanOf(item, meaning, node), meaning)),
    ...gains.map(({ gain }) => show.number(gain[meaning][node] ?? Number.NaN, meaning, { sign: true })),
  ];
  const rows = nodes
    .map((node) => ({
      name: show.number(comparison.engineSpeedRpm[node]!, 'engineSpeed'),
      unit: show.unit('engineSpeed'),
      cells: [...cellsOf('power', node), ...cellsOf('torque', node)],
    }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  if (rows.length === 0) return null;
  const columns = (['power', 'torque'] as const).flatMap((meaning) => [
    ...shown.map(({ key, index }) => ({ text: `${key}, ${show.unit(meaning)}`, combination: index })),
    ...gains.map(({ changed }) => ({
      text: `${differenceName(changed.key, baseline.key)}, ${show.unit(meaning)}`,
      combination: null,
    })),
  ]);
  return { id: 'at-speeds', title: 'Power and torque at chosen speeds', columns, rows };
}
