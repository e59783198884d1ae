import type { Comparison, Gain } from '@pullbook/core/compare';
import type { ViewOptions } from './model.ts';
import { type Showing, showingIn } from './showing.ts';
import type { TrialInView } from './trial-in-view.ts';

/** A gain with all that its sentence needs, whether it is asked by a trial or by a comparison without one. */
export interface SaidGain {
  gain: Gain;
  comparison: Comparison;
  /** Of the averages, r/min. */
  window: [low: number, high: number];
  baseline: { key: string; shortName: string };
  changed: { key: string; shortName: string };
  bothSupercharged: boolean;
  show: Showing;
}

/** The gains of a trial against its baseline; none where they share no window. */
export function saidGains({ comparison, gains, baseline, show }: TrialInView): SaidGain[] {
  const window = comparison?.averagesWindowRpm;
  if (!comparison || !window) return [];
  return gains.map(({ gain, changed }) => ({
    gain,
    comparison,
    window,
    baseline,
    changed,
    bothSupercharged: baseline.supercharged && changed.supercharged,
    show,
  }));
}

/** A gain of a comparison without a trial; `null`: there is none. Boost in both is all that tells of superchargers. */
export function saidGainOf(
  comparison: Comparison,
  changedKey: string,
  names: Readonly<Record<string, string>>,
  options: ViewOptions,
): SaidGain | null {
  const gain = comparison.gains.find((one) => one.changedKey === changedKey);
  const window = comparison.averagesWindowRpm;
  if (!gain || !window) return null;
  const named = (key: string) => ({ key, shortName: names[key] ?? '' });
  return {
    gain,
    comparison,
    window,
    baseline: named(gain.baselineKey),
    changed: named(changedKey),
    bothSupercharged: gain.topBoost !== null,
    show: showingIn(options),
  };
}

/** Both means at the highest speed of the window where both have a figure. */
export function atTop({
  comparison,
  gain,
  window,
}: SaidGain): { rpm: number; baseline: number; changed: number } | null {
  const meanOf = (wanted: string) =>
    comparison.combinations.find(({ key }) => key === wanted)?.channels.get('power')?.mean;
  const before = meanOf(gain.baselineKey);
  const after = meanOf(gain.changedKey);
  const nodes = comparison.engineSpeedRpm;
  for (let index = nodes.length - 1; index >= 0; index -= 1) {
    const rpm = nodes[index]!;
    const pair = [before?.[index] ?? Number.NaN, after?.[index] ?? Number.NaN] as const;
    if (rpm >= window[0] && rpm <= window[1] && pair.every(Number.isFinite)) {
      return { rpm, baseline: pair[0], changed: pair[1] };
    }
  }
  return null;
}
