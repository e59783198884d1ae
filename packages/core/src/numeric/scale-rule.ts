import { demandPositive } from './demand.ts';
import { logLessChange } from './log-gamma.ts';
import { rootInBracket } from './root-in-bracket.ts';

/** A deviation with so many degrees of freedom is known: its square is off by less than two parts in a million million. */
const KNOWN_FROM = 1e12;
/** Density left out at either end, as a logarithm: below the last digit of a double. */
const DROPPED = 38;

/** To be read only: it is remembered, since a plan asks for the same few many times. */
export interface ScaleRule {
  scales: Float64Array;
  weights: Float64Array;
}

const MOST_REMEMBERED = 200;
const remembered = new Map<string, ScaleRule>();

/**
 * Values of an estimated standard deviation over the true one, S with S² = chi²(df) / df, and weights that add to 1: the weighted
 * sum of a function is its mean over S. Equal steps of ln S, where the density falls off on both sides, so that the plain sum
 * converges faster than any power of the step: the mean of S² comes out as 1 to 1e-12. One value, 1, where the
 * deviation is known (Infinity, or so many that nothing tells them apart).
 *
 * @param finest widest step of ln S that the function to be averaged stands
 * @example scaleRule(10).scales // about sixty values from 0.01 to 3.4
 */
export function scaleRule(degreesOfFreedom: number, finest = Number.POSITIVE_INFINITY): ScaleRule {
  const key = `${degreesOfFreedom} ${finest}`;
  const known = remembered.get(key);
  if (known !== undefined) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const rule = workedRule(degreesOfFreedom, finest);
  remembered.set(key, rule);
  return rule;
}

function workedRule(degreesOfFreedom: number, finest: number): ScaleRule {
  demandPositive('degrees of freedom', degreesOfFreedom, true);
  demandPositive('step of the logarithm', finest, true);
  if (degreesOfFreedom >= KNOWN_FROM) return { scales: Float64Array.of(1), weights: Float64Array.of(1) };
  const logDensity = (u: number): number =>
    (degreesOfFreedom / 2) * logLessChange(Math.exp(2 * u), Math.expm1(2 * u));
  const low = rootInBracket((u) => logDensity(u) + DROPPED, {
    low: -DROPPED / degreesOfFreedom - 1,
    high: 0,
  });
  const high = rootInBracket((u) => -logDensity(u) - DROPPED, {
    low: 0,
    high: DROPPED / degreesOfFreedom + 2,
  });
  const step = Math.min(0.1, 0.5 / Math.sqrt(2 * degreesOfFreedom), finest);
  const count = Math.ceil((high - low) / step) + 1;
  const scales = new Float64Array(count);
  const weights = new Float64Array(count);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const u = low + i * step;
    scales[i] = Math.exp(u);
    weights[i] = Math.exp(logDensity(u));
    sum += weights[i]!;
  }
  for (let i = 0; i < count; i++) weights[i]! /= sum;
  return { scales, weights };
}
