import { mean } from '../numeric/mean.ts';
import { speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { Rows } from './grid-samples.ts';
import { medianSpacingRpm } from './kind-of-rows.ts';
import type { ChannelMeaning, GriddedCurve } from './model.ts';

/** Settled rows in ascending order at their own speeds. Rows of one speed are averaged, with a remark. */
export function gridPoints({ speedRpm, channels, rows }: Rows): { curve: GriddedCurve; remarks: Remark[] } {
  const bySpeed = new Map<number, number[]>();
  for (const row of [...rows].sort((a, b) => speedRpm[a]! - speedRpm[b]!)) {
    const speed = speedRpm[row]!;
    if (Number.isFinite(speed)) bySpeed.set(speed, [...(bySpeed.get(speed) ?? []), row]);
  }
  const groups = [...bySpeed.values()];
  const doubled = [...bySpeed].filter(([, group]) => group.length > 1);
  const engineSpeedRpm = Float64Array.from(bySpeed.keys());
  const gridded = new Map<ChannelMeaning, Float64Array>();
  for (const [meaning, values] of channels) {
    if (meaning === 'time' || meaning === 'engineSpeed' || meaning === 'other') continue;
    gridded.set(
      meaning,
      Float64Array.from(groups, (group) => mean(group.map((row) => values[row]!))),
    );
  }
  const spacing = medianSpacingRpm(engineSpeedRpm);
  return {
    curve: {
      kindOfRows: 'points',
      binWidthRpm: Number.isFinite(spacing) ? Math.round(spacing) : 0,
      engineSpeedRpm,
      count: Float64Array.from(groups, (group) => group.length),
      channels: gridded,
    },
    remarks:
      doubled.length === 0
        ? []
        : [
            remark(
              'note',
              'speed-given-twice',
              said`${doubled.length} speeds have more than one row (first: ${speedFigure(doubled[0]![0])}, ${doubled[0]![1].length} rows). Their rows are averaged.`,
            ),
          ],
  };
}
