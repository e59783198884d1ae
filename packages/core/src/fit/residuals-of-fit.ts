import type { MatchCurve } from '../airpath/index.ts';
import { FITTED_CHANNELS } from './fitted-channels.ts';
import type { FitResidual, FitTarget } from './model.ts';
import { figureAt } from './readings-on-nodes.ts';

/** Measured beside matched for each pull and channel, at the pull's own speeds where both have a figure. */
export function residualsOf(targets: readonly FitTarget[], curves: readonly MatchCurve[]): FitResidual[] {
  return targets.flatMap(({ pull }, target) =>
    FITTED_CHANNELS.flatMap((channel): FitResidual[] => {
      const values = pull[channel.channel];
      if (values === null) return [];
      const both = pull.engineSpeedRpm.flatMap((speedRpm, node) => {
        const matched = figureAt(curves[target]!, channel, speedRpm);
        const measured = values[node]!;
        return Number.isFinite(matched) && Number.isFinite(measured) ? [{ speedRpm, matched, measured }] : [];
      });
      if (both.length === 0) return [];
      return [
        {
          pullId: pull.pullId,
          figure: channel.figure,
          engineSpeedRpm: both.map(({ speedRpm }) => speedRpm),
          measured: both.map(({ measured }) => measured),
          matched: both.map(({ matched }) => matched),
          rms: rmsOf(both, channel.isTemperature),
        },
      ];
    }),
  );
}

/** K of temperatures; else a share, against the figure's own root mean square, so that hardly any boost does not count as all of it. */
function rmsOf(both: readonly { measured: number; matched: number }[], isTemperature: boolean): number {
  const squares = both.reduce((sum, { measured, matched }) => sum + (measured - matched) ** 2, 0);
  const size = isTemperature ? both.length : both.reduce((sum, { measured }) => sum + measured ** 2, 0);
  return Math.sqrt(squares / size);
}
