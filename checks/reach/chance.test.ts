import { type MatchInput, type SpreadGroup, solveMatch } from '@pullbook/core/airpath';
import { expect, test } from 'vitest';
import { asked, matchedPoints, peakOf } from './ask.ts';
import { fromSeed, inventedFile } from './invented-file.ts';

/** Of the search, and here. */
const DRAWS = 1000;
const HERE = 1200;

/** Standard normal numbers by Box and Muller, from memory, on a generator that the program does not use. */
function normalsFrom(seed: number): () => number {
  const next = fromSeed(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** A part of a match, moved at each node by what was drawn: written into the input as a person who knew it would state it. */
const MOVED: Record<SpreadGroup['parts'][number], (input: MatchInput, by: readonly number[]) => MatchInput> =
  {
    baselineAir: (input, by) => withBaseline(input, 'airFlow', by),
    baselinePower: (input, by) => withBaseline(input, 'brakePower', by),
    head: (input, by) => {
      const { compressor } = input;
      return { ...input, compressor: { ...compressor, headShape: timesEach(compressor.headShape, by) } };
    },
    mapFlow: (input, by) => {
      const { compressor } = input;
      return {
        ...input,
        compressor: { ...compressor, flowScale: (compressor.flowScale ?? 1) * (1 + by[0]!) },
      };
    },
    efficiency: (input, by) => {
      const { compressor } = input;
      return {
        ...input,
        compressor: { ...compressor, efficiencyShift: compressor.efficiencyShift + by[0]! },
      };
    },
    cooler: (input, by) =>
      input.cooler === null
        ? input
        : { ...input, cooler: { ...input.cooler, effectiveness: input.cooler.effectiveness + by[0]! } },
    slip: (input, by) => ({ ...input, drive: { ...input.drive, slip: input.drive.slip + by[0]! } }),
    swallowing: (input, by) => {
      const { swallowing } = input;
      return { ...input, swallowing: { ...swallowing, breathing: timesEach(swallowing.breathing, by) } };
    },
    chargeHeat: (input, by) => ({
      ...input,
      charge: { ...input.charge, heatFactor: input.charge.heatFactor * (1 + by[0]!) },
    }),
    work: (input, by) => ({ ...input, work: { ...input.work, shape: timesEach(input.work.shape, by) } }),
  };

const timesEach = (values: readonly number[] | null | undefined, by: readonly number[]): number[] =>
  by.map((share, node) => (values?.[node] ?? 1) * (1 + share));

const withBaseline = (
  input: MatchInput,
  curve: 'airFlow' | 'brakePower',
  by: readonly number[],
): MatchInput => ({
  ...input,
  baseline: {
    ...input.baseline,
    [curve]: input.baseline[curve].map((value, node) => value * (1 + by[node]!)),
  },
});

/** Highest power of one draw, W. */
function drawn(input: MatchInput, spread: readonly SpreadGroup[], normal: () => number): number {
  const nodes = input.baseline.engineSpeedRpm;
  let moved = input;
  for (const { parts, factor, shapes } of spread) {
    const normals = factor[0]!.map(normal);
    for (const [line, part] of parts.entries()) {
      const by = factor[line]!.reduce((sum, deviation, column) => sum + deviation * normals[column]!, 0);
      moved = MOVED[part](
        moved,
        nodes.map((_, node) => by * (shapes?.[line]?.[node] ?? 1)),
      );
    }
  }
  return Math.max(...solveMatch(moved).figures.brakePower.filter(Number.isFinite));
}

test.each([21, 22])(
  'seed %i: chance and band of each way are those of plain draws',
  { timeout: 120_000 },
  async (seed) => {
    const file = inventedFile(seed);
    const now = peakOf(await matchedPoints(JSON.stringify(file)));
    const { answer, bundle } = await asked(JSON.stringify(file), {
      power: `${1.06 * now} kW`,
      without: ['supercharger', 'speedLimit'],
      mostChanges: 1,
      draws: DRAWS,
    });
    const normal = normalsFrom(seed);
    const seen: number[] = [];
    for (const rung of answer.rungs.slice(0, 3)) {
      const { input, spread } = rung.made!.match!;
      const peaks = Array.from({ length: HERE }, () => drawn(input, spread, normal)).sort((a, b) => a - b);
      const chance = peaks.filter((peak) => peak >= bundle.input.target.power).length / HERE;
      // Four standard deviations of two counts, at the widest.
      expect(Math.abs(chance - rung.chance)).toBeLessThan(4 * Math.sqrt(0.25 / HERE + 0.25 / DRAWS));
      const { low, high, value } = rung.peakPower;
      const width = peaks[Math.floor(0.975 * HERE)]! - peaks[Math.floor(0.025 * HERE)]!;
      // Each end at 2.5 % of a thousand draws is known to a twentieth of the width: four standard deviations of four such ends are a fifth and more.
      expect(Math.abs((high - low) / width - 1)).toBeLessThan(0.2);
      expect(Math.abs(peaks[HERE / 2]! / value - 1)).toBeLessThan(0.02);
      seen.push(rung.chance);
    }
    expect(seen.some((chance) => chance > 0.1 && chance < 0.9)).toBe(true);
  },
);
