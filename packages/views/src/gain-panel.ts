import type { ChartPanel } from '@pullbook/charts';
import { plottedCurve } from './curve-panels.ts';
import type { TrialInView } from './trial-in-view.ts';

/** Changed less baseline over the common window, in ink; `null` where nothing is gained against anything. */
export function gainPanel(view: TrialInView, share: number): ChartPanel | null {
  const { comparison, gains, baseline, show } = view;
  if (!comparison || gains.length === 0) return null;
  const [only] = gains;
  const title =
    gains.length === 1 && only
      ? `Gain, ${differenceName(only.changed.key, baseline.key)}`
      : `Gain against ${baseline.key}`;
  return {
    id: 'gain',
    title,
    unit: show.unit('power'),
    note: '',
    decimals: 0,
    share,
    zeroLine: true,
    lines: gains.map(({ gain, changed }) => ({
      id: changed.key,
      style: 'ink',
      weight: 'mean',
      ...plottedCurve(view, comparison.engineSpeedRpm, gain.power, 'power'),
      label: { key: differenceName(changed.key, baseline.key), name: '', value: null },
    })),
    bands: [],
    marks: [],
  };
}

/** `B − A` */
export const differenceName = (changed: string, baseline: string): string => `${changed} − ${baseline}`;
