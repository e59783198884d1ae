import type { GainBand } from '@pullbook/core/compare';
import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { bandPerCent, bandText } from './band-text.ts';
import { observedHighest } from './caveats.ts';
import { differenceKind } from './cursor-table.ts';
import { differenceName } from './gain-panel.ts';
import type { ShownTable } from './model.ts';
import { wholeTens } from './showing.ts';
import type { CombinationInTrial, TrialInView } from './trial-in-view.ts';

type Range = readonly [low: number, high: number];

const columnOf = ({ key, index }: CombinationInTrial): ShownTable['columns'][number] => ({
  text: key,
  combination: index,
});
export const withFigures = (view: TrialInView) => view.combinations.filter(({ figures }) => figures !== null);

/** Highest figures of the mean curves, each over its own window, with observed power where it was corrected. */
export function peaksTable(view: TrialInView): ShownTable | null {
  const shown = withFigures(view);
  if (!shown.some(({ figures }) => figures?.peakPower || figures?.peakTorque)) return null;
  const { show } = view;
  const peakGains = view.gains.filter(({ gain }) => gain.band?.peakPower);
  const row = (
    name: string,
    unit: string,
    cell: (item: CombinationInTrial) => string,
    more: string[] = peakGains.map(() => ''),
  ) => ({ name, unit, cells: [...shown.map(cell), ...more] });
  const place = (rpm: number | undefined) =>
    rpm === undefined ? '' : show.number(wholeTens(rpm), 'engineSpeed');
  const differences = (cell: (peak: { gain: number; low: number; high: number }) => string) =>
    peakGains.flatMap(({ gain: { band } }) => (band?.peakPower ? [cell(band.peakPower)] : []));
  const rows: ShownTable['rows'] = [
    row(
      'Highest power',
      show.unit('power'),
      ({ figures }) => show.number(figures?.peakPower?.value ?? Number.NaN, 'power'),
      differences(({ gain }) => show.number(gain, 'power', { sign: true })),
    ),
    ...(shown.some(({ figures }) => figures?.peakPowerBand)
      ? [
          row(
            'Highest power, 95\u00a0% band',
            show.unit('power'),
            ({ figures }) =>
              figures?.peakPowerBand ? bandText(show, figures.peakPowerBand, { decimals: 1 }) : '',
            differences(({ low, high }) => bandText(show, [low, high], { decimals: 1 })),
          ),
        ]
      : []),
    row(
      'Speed of the highest power',
      show.unit('engineSpeed'),
      ({ figures }) => place(figures?.peakPower?.atRpm),
      peakGains.map(({ changed }) => speedsApart(view, changed)),
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
  const columns = [
    ...shown.map(columnOf),
    ...peakGains.map(({ changed }) => ({
      text: differenceName(changed.key, view.baseline.key),
      combination: null,
    })),
  ];
  return { id: 'peaks', title: 'Highest figures', columns, rows };
}

/** `same` where both still climb at one last speed; else how far the peak moved. */
function speedsApart({ baseline, show }: TrialInView, changed: CombinationInTrial): string {
  const [before, after] = [baseline, changed].map(({ figures }) => figures?.peakPower);
  if (!before || !after) return '';
  const moved = wholeTens(after.atRpm) - wholeTens(before.atRpm);
  return moved === 0 ? 'same' : show.number(moved, 'engineSpeed', { sign: true });
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
  rows.push(...bandRows(view, shown.length));
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

/** 95 % and 80 % band of each gain in average power, under its difference and its share. */
function bandRows({ gains, show }: TrialInView, before: number): ShownTable['rows'] {
  if (gains.every(({ gain }) => gain.band === null)) return [];
  const row = (
    name: string,
    rangesOf: (band: GainBand, key: string) => { power: Range; ratio: Range | null },
  ) => ({
    name,
    unit: show.unit('power'),
    cells: [
      ...Array<string>(before).fill(''),
      ...gains.flatMap(({ gain: { band }, changed }) => {
        if (band === null) return ['', ''];
        const { power, ratio } = rangesOf(band, changed.key);
        return [bandText(show, power, { decimals: 1 }), ratio === null ? '' : bandPerCent(show, ratio, 2)];
      }),
    ],
  });
  return [
    row('Power, 95\u00a0% band of the gain', ({ meanPower, meanPowerRatio }) => ({
      power: meanPower,
      ratio: meanPowerRatio,
    })),
    row('Power, 80\u00a0% band of the gain', ({ likelyPower, scatter }, key) => {
      const own = scatter.gains.find(({ group }) => group === key);
      return { power: likelyPower, ratio: own ? [own.likelyLow, own.likelyHigh] : null };
    }),
  ];
}
