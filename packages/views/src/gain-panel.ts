import type { ChartBand, ChartPanel, ChartRule } from '@pullbook/charts';
import type { Comparison } from '@pullbook/core/compare';
import { toldStretches } from './clear-ranges.ts';
import { plottedCurve } from './curve-panels.ts';
import { type SaidGain, saidGains } from './said-gain.ts';
import type { TrialInView } from './trial-in-view.ts';

/** Changed less baseline over the common window with its band, in ink; `null` where nothing is gained against anything. */
export function gainPanel(view: TrialInView, share: number): ChartPanel | null {
  const { comparison, gains, baseline, show } = view;
  if (!comparison || gains.length === 0) return null;
  const [only] = gains;
  const title =
    gains.length === 1 && only
      ? `Gain, ${differenceName(only.changed.key, baseline.key)}`
      : `Gain against ${baseline.key}`;
  const said = saidGains(view);
  const bands = said.flatMap((one) => bandOf(view, one));
  return {
    id: 'gain',
    title,
    unit: show.unit('power'),
    note: bands.length === 0 ? '' : `95\u00a0% band, ${notPlain(comparison) || 'whole window'}`,
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
    bands,
    marks: [],
    rules: said.length === 1 && only ? said.flatMap(clearRules) : [],
  };
}

/** Why a gain is not the difference of the mean curves above it; '' where it is. */
function notPlain({ remarks }: Comparison): string {
  const codes = new Set(remarks.map(({ code }) => code));
  if (codes.has('drift-taken-out')) return 'drift taken out: not the plain difference of the curves';
  return codes.has('weighed-by-set-up') ? 'weighed by set-up: not the plain difference of the curves' : '';
}

/** The band that holds for all speeds of the window at once: what lies outside it is clear. */
function bandOf({ show }: TrialInView, { gain, comparison }: SaidGain): ChartBand[] {
  if (gain.band === null) return [];
  const { low, high } = gain.band.simultaneous;
  const nodes = [...comparison.engineSpeedRpm.keys()].filter(
    (node) => Number.isFinite(low[node]) || Number.isFinite(gain.power[node]),
  );
  const edge = (values: Float64Array) =>
    nodes.map((node) => show.plotted(values[node] ?? Number.NaN, 'power'));
  return [
    {
      style: 'ink',
      x: nodes.map((node) => comparison.engineSpeedRpm[node]!),
      low: edge(low),
      high: edge(high),
    },
  ];
}

/** Where a clear stretch begins or ends inside the window, with its words on the side where it is clear. */
function clearRules(said: SaidGain): ChartRule[] {
  const [gains, losses] = [toldStretches(said, 1), toldStretches(said, -1)];
  const own = [...(gains?.listed ?? []), ...(losses?.listed ?? [])]
    .filter(({ reaches }) => !(reaches[0] && reaches[1]))
    .toSorted((one, other) => one.fromRpm - other.fromRpm);
  const speed = (rpm: number) => said.show.number(rpm, 'engineSpeed');
  return own.flatMap(({ fromRpm, toRpm, reaches: [fromLow, toHigh], sign }): ChartRule[] => {
    const what = gains && losses ? `${sign > 0 ? 'gain' : 'loss'} clear` : 'clear';
    if (fromRpm === toRpm) return [{ x: fromRpm, text: `${what} at ${speed(fromRpm)}`, side: 'right' }];
    if (fromLow) return [{ x: toRpm, text: `${what} below ${speed(toRpm)}`, side: 'left' }];
    const text = toHigh
      ? `${what} above ${speed(fromRpm)}`
      : `${what} from ${speed(fromRpm)} to ${speed(toRpm)}`;
    const first: ChartRule = { x: fromRpm, text, side: 'right' };
    return toHigh ? [first] : [first, { x: toRpm, text: '', side: 'left' }];
  });
}

/** `B − A` */
export const differenceName = (changed: string, baseline: string): string => `${changed} − ${baseline}`;
