import type { GainBand } from '@pullbook/core/compare';
import { bandText } from './band-text.ts';
import { differenceName } from './gain-panel.ts';
import type { ShownTable } from './model.ts';
import type { Showing } from './showing.ts';
import type { CombinationInTrial, TrialInView } from './trial-in-view.ts';
import { withFigures } from './trial-tables.ts';

/** Power and torque at whole 500 r/min, each gain in power with its band for that speed alone. */
export function atSpeedsTable(view: TrialInView): ShownTable | null {
  const { comparison, show, gains, baseline } = view;
  const shown = withFigures(view);
  if (!comparison || shown.length === 0) return null;
  const nodes = [...comparison.engineSpeedRpm.keys()].filter(
    (node) => comparison.engineSpeedRpm[node]! % 500 === 0,
  );
  const meanOf = (item: CombinationInTrial, meaning: 'power' | 'torque', node: number) =>
    item.figures?.channels.get(meaning)?.mean[node] ?? Number.NaN;
  const cellsOf = (meaning: 'power' | 'torque', node: number) => [
    ...shown.map((item) => show.number(meanOf(item, meaning, node), meaning)),
    ...gains.flatMap(({ gain }) => [
      show.number(gain[meaning][node] ?? Number.NaN, meaning, { sign: true }),
      ...(meaning === 'power' && gain.band ? [pointwiseText(show, gain.band, node)] : []),
    ]),
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
    ...gains.flatMap(({ gain, changed }) => {
      const name = differenceName(changed.key, baseline.key);
      return [
        { text: `${name}, ${show.unit(meaning)}`, combination: null },
        ...(meaning === 'power' && gain.band
          ? [{ text: `${name}, 95\u00a0% at that speed`, combination: null }]
          : []),
      ];
    }),
  ]);
  return { id: 'at-speeds', title: 'Power and torque at chosen speeds', columns, rows };
}

function pointwiseText(show: Showing, { pointwise: { low, high } }: GainBand, node: number): string {
  const range: [number, number] = [low[node] ?? Number.NaN, high[node] ?? Number.NaN];
  return range.every(Number.isFinite) ? bandText(show, range, { decimals: 1 }) : '';
}
