import { chokeOf, USUAL_STAGE } from './generic-stage.ts';
import { MAP_GAS } from './map-gas.ts';

/**
 * The shape of a measured map: each speed line a super-ellipse from its highest pressure ratio to choke, where it stands vertical, with a parabola
 * left of it. Flow at choke, share of it at the highest pressure ratio, head there, both exponents and the parabola are low polynomials of
 * tip Mach number about what the generic stage does, each coefficient with a prior: so that one line is enough, eight lines say what
 * they have to say, and unmeasured speeds follow physics.
 */

/** A line in dimensionless terms. Flows are over (density × speed of sound × exit diameter²). */
export interface LineTerms {
  chokeFlow: number;
  topFlow: number;
  /** Isentropic enthalpy rise over tip speed², at the highest pressure ratio. */
  head: number;
  /** Exponents of the super-ellipse: of flow and of head. */
  flowExponent: number;
  headExponent: number;
  /** Share of the head lost from the top to no flow, by a parabola. */
  droop: number;
}

/** Coefficients of each term, in their order; with one standard deviation of what is expected of each before the points are seen. */
interface Term {
  name: keyof LineTerms;
  expected: number;
  spread: readonly number[];
}

/** Spreads are of the logarithm (of the share of the top: of its logit), for steps of 0.3 in tip Mach number. Tried on three measured maps. */
export const TERMS: readonly Term[] = [
  { name: 'chokeFlow', expected: 0, spread: [3, 0.3, 0.1, 0.05] },
  { name: 'topFlow', expected: 0.5, spread: [0.8, 0.7, 0.3, 0.1] },
  { name: 'head', expected: Math.log(0.55), spread: [1, 0.15, 0.05, 0.03] },
  { name: 'flowExponent', expected: Math.log(2), spread: [0.4, 0.3, 0.15] },
  { name: 'headExponent', expected: Math.log(1.6), spread: [0.4, 0.3, 0.15] },
  { name: 'droop', expected: Math.log(0.15), spread: [0.8, 0.5] },
];

export const COEFFICIENTS = TERMS.reduce((sum, { spread }) => sum + spread.length, 0);

/** Tip Mach number over which a coefficient's spread is stated. */
const MACH_SCALE = 0.3;

/** Outside the measured speeds the polynomials run on for about this much tip Mach number and then stay. */
const RUN_ON = 0.15;

/** What the terms are read with: middle of the measured tip Mach numbers and their ends. */
export interface MachSpan {
  low: number;
  high: number;
}

/** What of a line's terms does not depend on coefficients: it is asked a thousand times in a fit. */
export interface MachPlace {
  /** {@link machSteps} */
  steps: number;
  /** Choke flow as the generic stage has it, up to a factor. */
  usualChoke: number;
}

export const machPlace = (span: MachSpan, mach: number): MachPlace => ({
  steps: machSteps(span, mach),
  usualChoke: mach * chokeOf(USUAL_STAGE, Math.max(mach, 0.05)),
});

export const termsAt = (coefficients: readonly number[], span: MachSpan, mach: number): LineTerms =>
  termsOfPlace(coefficients, machPlace(span, mach));

export function termsOfPlace(coefficients: readonly number[], { steps, usualChoke }: MachPlace): LineTerms {
  let place = 0;
  const next = (term: number): number => {
    const count = TERMS[term]!.spread.length;
    let sum = 0;
    for (let k = count - 1; k >= 0; k--) sum = sum * steps + coefficients[place + k]!;
    place += count;
    return sum;
  };
  const chokeFlow = Math.exp(bounded(next(0), 12)) * usualChoke;
  return {
    chokeFlow,
    topFlow: chokeFlow * (0.05 + 0.92 / (1 + Math.exp(-bounded(next(1), 30)))),
    head: Math.exp(bounded(next(2), 8)),
    flowExponent: 1 + Math.exp(bounded(next(3), 2.5)) / 2,
    headExponent: 0.7 + Math.exp(bounded(next(4), 2.5)) / 2,
    droop: Math.min(0.9, Math.exp(bounded(next(5), 6))),
  };
}

/** Isentropic rise of temperature over inlet temperature for a head at a tip Mach number. */
export const riseOfHead = (head: number, mach: number): number => (MAP_GAS.ratio - 1) * head * mach * mach;

/** What the polynomials are of: tip Mach number from the middle of the measured in steps of 0.3; runs on a little beyond the measured. */
export const machSteps = (span: MachSpan, mach: number): number =>
  (heldIn(span, mach) - (span.low + span.high) / 2) / MACH_SCALE;

function heldIn({ low, high }: MachSpan, mach: number): number {
  if (mach < low) return low - RUN_ON * Math.tanh((low - mach) / RUN_ON);
  if (mach > high) return high + RUN_ON * Math.tanh((mach - high) / RUN_ON);
  return mach;
}

const bounded = (value: number, most: number): number => Math.max(-most, Math.min(most, value));
