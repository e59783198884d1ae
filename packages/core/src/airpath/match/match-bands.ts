import { selectQuantile } from '../../numeric/index.ts';
import {
  type FigureBand,
  MATCH_FIGURES,
  type MatchBands,
  type MatchCase,
  type MatchFigure,
} from '../model.ts';
import { type CaseDraws, type MatchDraws, matchDraws } from './match-draws.ts';

/** 95 of 100 draws lie between. */
const LOW = 0.025;
const HIGH = 0.975;

/** Share of the draws that must have a solution, or a band would speak of the lucky ones. */
const LEAST_SOLVED = 0.9;

type Bands = Record<MatchFigure, FigureBand>;

/**
 * Bands of matches and of their differences against the first, in one thread. Differences are taken draw by draw, at equal engine
 * speeds, so that what both rest on cancels.
 *
 * @example matchBands([before, after], { draws: 1000, seed: 7 }).differences[1].brakePower.low
 */
export function matchBands(
  cases: readonly MatchCase[],
  { draws, seed }: { draws: number; seed: number },
): MatchBands {
  return bandsOfDraws([matchDraws(cases, { draws, seed })]);
}

/** Bands from slices of draws that follow each other in the order given. */
export function bandsOfDraws(slices: readonly MatchDraws[]): MatchBands {
  const cases = slices[0]?.cases ?? [];
  const draws = slices.reduce((sum, slice) => sum + slice.draws, 0);
  const room = new Float32Array(draws);
  const first = cases[0];
  return {
    cases: cases.map((one, place) =>
      bandsOver(one, (column, node) => gather(slices, place, { column, node }, room)),
    ),
    differences:
      first === undefined || cases.length < 2
        ? []
        : cases.map((one, place) => {
            const nodeOfFirst = one.engineSpeedRpm.map((speed) => first.engineSpeedRpm.indexOf(speed));
            return bandsOver(one, (column, node) =>
              gatherDifference(slices, place, { column, node, nodeOfFirst: nodeOfFirst[node]! }, room),
            );
          }),
    draws,
    seed: slices[0]?.seed ?? 0,
  };
}

/** @param solved gives the finite values of a figure at a node, or `null` where there are too few. */
function bandsOver(
  { engineSpeedRpm }: CaseDraws,
  solved: (column: number, node: number) => Float32Array | null,
): Bands {
  return Object.fromEntries(
    MATCH_FIGURES.map((figure, column) => {
      const band: FigureBand = { low: [], high: [] };
      engineSpeedRpm.forEach((_, node) => {
        const values = solved(column, node);
        band.low.push(values === null ? Number.NaN : selectQuantile(values, LOW));
        band.high.push(values === null ? Number.NaN : selectQuantile(values, HIGH));
      });
      return [figure, band];
    }),
  ) as Bands;
}

function gather(
  slices: readonly MatchDraws[],
  place: number,
  { column, node }: { column: number; node: number },
  room: Float32Array,
): Float32Array | null {
  let count = 0;
  for (const { cases, draws } of slices) {
    const { values, engineSpeedRpm } = cases[place]!;
    const start = (column * engineSpeedRpm.length + node) * draws;
    for (let draw = 0; draw < draws; draw++) {
      const value = values[start + draw]!;
      if (Number.isFinite(value)) room[count++] = value;
    }
  }
  return enough(room, count);
}

function gatherDifference(
  slices: readonly MatchDraws[],
  place: number,
  { column, node, nodeOfFirst }: { column: number; node: number; nodeOfFirst: number },
  room: Float32Array,
): Float32Array | null {
  if (nodeOfFirst < 0) return null;
  let count = 0;
  for (const { cases, draws } of slices) {
    const one = cases[place]!;
    const first = cases[0]!;
    const start = (column * one.engineSpeedRpm.length + node) * draws;
    const startOfFirst = (column * first.engineSpeedRpm.length + nodeOfFirst) * draws;
    for (let draw = 0; draw < draws; draw++) {
      const value = one.values[start + draw]! - first.values[startOfFirst + draw]!;
      if (Number.isFinite(value)) room[count++] = value;
    }
  }
  return enough(room, count);
}

const enough = (room: Float32Array, count: number): Float32Array | null =>
  count > 0 && count >= LEAST_SOLVED * room.length ? room.subarray(0, count) : null;
