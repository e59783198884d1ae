import type { ComparedCombination, Gain } from '@pullbook/core/compare';
import { toInside } from '@pullbook/core/quantity';
import type {
  ScatterComparison,
  SpreadUsed,
  Trend,
  VarianceParts,
  VerdictWord,
} from '@pullbook/core/scatter';

export const NODES = Float64Array.from({ length: 36 }, (_, node) => 3000 + 100 * node);

/** How sure a test says that a gain is, in hp. */
export interface InventedBand {
  word: VerdictWord;
  mean: [low: number, high: number];
  likely?: [low: number, high: number];
  /** Half-widths at each speed: for it alone, and for all at once. */
  pointwise?: number;
  simultaneous?: number;
  clear?: { fromRpm: number; toRpm: number; sign: 1 | -1 }[];
  crossovers?: { atRpm: number; lowRpm: number; highRpm: number }[];
  peak?: { gain: number; low: number; high: number };
  noDifferenceLargerThan?: number;
  worthwhileRatio?: number;
  /** Variances as shares squared; missing: pull and set-up alone. */
  parts?: Partial<VarianceParts>;
  historySetAside?: boolean;
  fromHistory?: boolean;
  drift?: 'taken-out' | 'carried' | 'none';
  trends?: Trend[];
}

/** The gain with the band that a test gives it; the rest of what a band is made of stands as told. */
export function withBand(
  gain: Gain,
  sure: InventedBand | undefined,
  of: { baseline: ComparedCombination; changed: ComparedCombination; window: [number, number] },
): Gain {
  if (sure === undefined) return gain;
  const watt = (hp: number) => toInside(hp, 'hp');
  const base = of.baseline.averages.get('power')!;
  const range = ([low, high]: [number, number]): [number, number] => [watt(low), watt(high)];
  const around = (half: number) => ({
    low: gain.power.map((value, node) => (isIn(of.window, node) ? value - watt(half) : Number.NaN)),
    high: gain.power.map((value, node) => (isIn(of.window, node) ? value + watt(half) : Number.NaN)),
  });
  const pulls = { baseline: of.baseline.pullIds.length, changed: of.changed.pullIds.length };
  const likely = sure.likely ?? sure.mean;
  const spread = (sigma: number, fromRepeats: SpreadUsed['fromRepeats'] = null): SpreadUsed => ({
    sigma,
    degreesOfFreedom: 6,
    fromRepeats,
    historySetAside: false,
    from: sure.fromHistory ? 'shop' : 'built-in',
  });
  const parts = { pull: 1e-5, setUp: 3e-5, day: 0, cell: 0, drift: 0, ...sure.parts };
  const noDifferenceLargerThan = sure.noDifferenceLargerThan ?? 0.02;
  const scatter: ScatterComparison = {
    engineSpeedRpm: NODES,
    windowRpm: of.window,
    gains: [
      {
        group: gain.changedKey,
        ratio: gain.meanPowerRatio,
        logGain: Math.log1p(gain.meanPowerRatio),
        standardError: Math.sqrt(Object.values(parts).reduce((sum, value) => sum + value, 0)),
        degreesOfFreedom: 8,
        critical: 2.3,
        low: watt(sure.mean[0]) / base,
        high: watt(sure.mean[1]) / base,
        likelyLow: watt(likely[0]) / base,
        likelyHigh: watt(likely[1]) / base,
        noDifferenceLargerThan,
        verdict: sure.word,
        parts,
        weights: new Float64Array(),
        curve: {
          logGain: new Float64Array(),
          pointwise: new Float64Array(),
          simultaneous: new Float64Array(),
          criticalPointwise: 2.3,
          criticalSimultaneous: 3.1,
          degreesOfFreedom: 8,
        },
        clearRanges: sure.clear ?? [],
        crossovers: sure.crossovers ?? [],
        look: null,
      },
    ],
    spreads: {
      pull: {
        ...spread(0.005, pulls.baseline + pulls.changed > 2 ? { sigma: 0.012, degreesOfFreedom: 3 } : null),
        historySetAside: sure.historySetAside ?? false,
      },
      setUp: spread(0.005),
      day: spread(0.009),
      cell: spread(0.02),
      within: { ...spread(0.003), lengthRpm: 300 },
    },
    drift: { handling: sure.drift ?? 'none', perHour: null },
    trends: sure.trends ?? [],
    counts: new Map([
      [gain.baselineKey, { pulls: pulls.baseline, setUps: 1, sessions: 1 }],
      [gain.changedKey, { pulls: pulls.changed, setUps: 1, sessions: 1 }],
    ]),
    setUps: parts.setUp === 0 ? 1 : 2,
    fromHistory: sure.fromHistory ?? false,
  };
  return {
    ...gain,
    band: {
      meanPower: range(sure.mean),
      meanPowerRatio: [watt(sure.mean[0]) / base, watt(sure.mean[1]) / base],
      likelyPower: range(likely),
      pointwise: around(sure.pointwise ?? 5),
      simultaneous: around(sure.simultaneous ?? 8),
      clearRanges: sure.clear ?? [],
      crossovers: sure.crossovers ?? [],
      peakPower: sure.peak
        ? { gain: watt(sure.peak.gain), low: watt(sure.peak.low), high: watt(sure.peak.high) }
        : null,
      scatter,
    },
    verdict: {
      word: sure.word,
      worthwhileRatio: sure.worthwhileRatio ?? 0.01,
      noDifferenceLargerThan,
      pulls,
      setUps: { baseline: 1, changed: 1 },
    },
  };
}

const isIn = ([low, high]: [number, number], node: number): boolean =>
  NODES[node]! >= low && NODES[node]! <= high;
