import { choleskyOf, solveWith } from '../../numeric/index.ts';
import { GUESSED_EFFICIENCY } from './generic-rated.ts';
import { genericWork, USUAL_STAGE } from './generic-stage.ts';
import type { PlainPoint } from './map-lines-head.ts';
import { type LineTerms, type MachSpan, machSteps, riseOfHead } from './map-lines-model.ts';

/**
 * Work (enthalpy rise over tip speed²) along the lines: a parabola of the flow's share of choke, its coefficients low polynomials of tip Mach number.
 * Work is what the impeller's geometry says and is nearly straight, where efficiency has a hump; efficiency is head over work.
 */
export interface WorkFit {
  coefficients: number[];
}

/** For each power of (share of choke - 0.8) what is expected of its coefficients, by powers of tip Mach number. */
const EXPECTED: readonly (readonly { expected: number; deviation: number }[])[] = (() => {
  const at = (share: number): number => genericWork({ ...USUAL_STAGE, designFlow: 1 }, share / 0.84);
  return [
    [
      { expected: at(0.8), deviation: 0.5 },
      { expected: 0, deviation: 0.05 },
      { expected: 0, deviation: 0.03 },
      { expected: 0, deviation: 0.02 },
    ],
    [
      { expected: at(1) - at(0), deviation: 0.15 },
      { expected: 0, deviation: 0.15 },
      { expected: 0, deviation: 0.1 },
    ],
    [
      { expected: 0, deviation: 0.3 },
      { expected: 0, deviation: 0.3 },
    ],
  ];
})();

const CENTRE = 0.8;
/** Share by which the work of a point is expected to lie off. */
const EXPECTED_SCATTER = 0.006;

/** Fits the work to points with an efficiency; without any, to the guess that a usual stage has at the best of each line. */
export function fitWork(
  points: readonly PlainPoint[],
  span: MachSpan,
  termsOf: (mach: number) => LineTerms,
): WorkFit {
  const told = points.filter(({ efficiency, rise }) => efficiency !== null && rise > 0.01);
  const rows =
    told.length > 0
      ? told.map(({ mach, flow, rise, efficiency }) => ({
          mach,
          share: flow / termsOf(mach).chokeFlow,
          work: rise / efficiency! / riseOfHead(1, mach),
        }))
      : guessedRows(span, termsOf);
  const priors = EXPECTED.flat();
  const normal = priors.map(({ deviation }, row) =>
    priors.map((_, column) => (row === column ? 1 / deviation ** 2 : 0)),
  );
  const right = priors.map(({ expected, deviation }) => expected / deviation ** 2);
  for (const { mach, share, work } of rows) {
    const basis = basisAt(span, mach, share);
    const weight = 1 / (EXPECTED_SCATTER * work) ** 2;
    basis.forEach((one, row) => {
      right[row]! += weight * one * work;
      basis.forEach((other, column) => {
        normal[row]![column]! += weight * one * other;
      });
    });
  }
  return { coefficients: solveWith(choleskyOf(normal), right) };
}

/** The parabola of share of choke at a tip Mach number: constant, slope and curve about 0.8, turned to those about 0. */
export function workAt({ coefficients }: WorkFit, span: MachSpan, mach: number): [number, number, number] {
  const powers = machPowers(span, mach);
  let place = 0;
  const [level, slope, curve] = EXPECTED.map((terms) =>
    terms.reduce((sum, _, power) => sum + coefficients[place++]! * powers[power]!, 0),
  ) as [number, number, number];
  return [level - slope * CENTRE + curve * CENTRE ** 2, slope - 2 * curve * CENTRE, curve];
}

function guessedRows(span: MachSpan, termsOf: (mach: number) => LineTerms) {
  return [span.low, (span.low + span.high) / 2, span.high].map((mach) => {
    const { head } = termsOf(mach);
    return { mach, share: CENTRE, work: (0.93 * head) / GUESSED_EFFICIENCY };
  });
}

function basisAt(span: MachSpan, mach: number, share: number): number[] {
  const powers = machPowers(span, mach);
  return EXPECTED.flatMap((terms, curve) =>
    terms.map((_, power) => (share - CENTRE) ** curve * powers[power]!),
  );
}

function machPowers(span: MachSpan, mach: number): [number, number, number, number] {
  const u = machSteps(span, mach);
  return [1, u, u * u, u * u * u];
}
