import { readFileSync } from 'node:fs';
import {
  compareArrays,
  type PullArray,
  type ScatterHistory,
  type VarianceParts,
} from '@pullbook/core/scatter';
import { describe, expect, test } from 'vitest';

// Expected values by an independent generalised least squares in NumPy and SciPy (reference.py beside this file, written from
// the model and not from the code); critical values by a million draws, with their standard error.

interface ExpectedGain {
  group: string;
  logGain: number;
  standardError: number;
  parts: VarianceParts;
  logGainAtNodes: number[];
  deviationAtNode: number;
  weights: number[];
  critical: number;
  criticalError: number;
  /** Missing with one gain. The program takes the smallest correlation for all, which is exact where they are equal. */
  equalCorrelations?: boolean;
  criticalSimultaneous?: number;
  criticalSimultaneousError?: number;
}

interface Case {
  name: string;
  baseline: string;
  windowRpm: [number, number] | null;
  history: ScatterHistory;
  pulls: (Omit<PullArray, 'power'> & { power: (number | null)[] })[];
  expected: { engineSpeedRpm: number[]; gains: ExpectedGain[] };
}

const { cases } = JSON.parse(readFileSync(new URL('cases.json', import.meta.url), 'utf8')) as {
  cases: Case[];
};

/** Of shares and of the logarithm of power: far below any brake; the data are rounded to six digits alike for both. */
const SHARE = 1e-9;
/** Of a relative standard error. */
const RELATIVE = 1e-6;
/** What the program promises of a critical value (0.003), the rest for the simulation's own error. */
const CRITICAL = 0.005;

describe.each(cases)('$name', ({ baseline, windowRpm, history, pulls, expected }) => {
  const compared = compareArrays(
    pulls.map((pull) => ({ ...pull, power: pull.power.map((power) => power ?? Number.NaN) })),
    { baseline, windowRpm, history },
  );
  if (!compared.ok) throw new Error(compared.remarks.map(({ message }) => message).join(' '));
  const { engineSpeedRpm, gains, spreads } = compared.value;
  const full = Array.from(engineSpeedRpm.keys()).filter((node) =>
    Number.isFinite(gains[0]!.curve.logGain[node]!),
  );

  test('history stands as given', () => {
    for (const spread of Object.values(spreads)) expect(spread.historySetAside).toBe(false);
    expect(gains.map(({ group }) => group)).toEqual(expected.gains.map(({ group }) => group));
    expect(full.map((node) => engineSpeedRpm[node])).toEqual(expected.engineSpeedRpm);
  });

  test.each(expected.gains)('gain of $group, its weights and its variance part by part', (known) => {
    const gain = gains.find(({ group }) => group === known.group)!;
    expect(Math.abs(gain.logGain - known.logGain)).toBeLessThan(SHARE);
    expect(Math.abs(gain.standardError / known.standardError - 1)).toBeLessThan(RELATIVE);
    known.weights.forEach((weight, pull) => {
      expect(Math.abs(gain.weights[pull]! - weight)).toBeLessThan(RELATIVE);
    });
    for (const [part, variance] of Object.entries(known.parts))
      expect(Math.abs(gain.parts[part as keyof VarianceParts] - variance)).toBeLessThan(
        RELATIVE * known.standardError ** 2,
      );
  });

  test.each(expected.gains)('gain of $group at each speed', (known) => {
    const { curve } = gains.find(({ group }) => group === known.group)!;
    known.logGainAtNodes.forEach((logGain, place) => {
      const node = full[place]!;
      expect(Math.abs(curve.logGain[node]! - logGain)).toBeLessThan(SHARE);
      const deviation = curve.pointwise[node]! / curve.criticalPointwise;
      expect(Math.abs(deviation / known.deviationAtNode - 1)).toBeLessThan(RELATIVE);
      expect(curve.simultaneous[node]! / curve.criticalSimultaneous).toBeCloseTo(deviation, 12);
    });
  });

  test.each(expected.gains)('how many standard errors hold the gain of $group', (known) => {
    const { critical, curve } = gains.find(({ group }) => group === known.group)!;
    const off = critical - known.critical;
    const tolerance = CRITICAL + 2 * known.criticalError;
    expect(off).toBeGreaterThan(-tolerance);
    // Unequal correlations: wider than needed, never narrower.
    expect(off).toBeLessThan(known.equalCorrelations === false ? 0.05 : tolerance);
    if (known.criticalSimultaneous !== undefined)
      expect(Math.abs(curve.criticalSimultaneous - known.criticalSimultaneous)).toBeLessThan(
        CRITICAL + 2 * known.criticalSimultaneousError!,
      );
  });
});
