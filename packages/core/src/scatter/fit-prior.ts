import { digamma, trigamma, trigammaInverse } from '../numeric/digamma.ts';
import { mean, sampleDeviation } from '../numeric/mean.ts';
import { median } from '../numeric/median.ts';

/**
 * A variance below this share of the middle one counts as this: two equal rounded figures are no proof of no scatter, and their
 * logarithm would drown the others. Of variances with two degrees of freedom chance makes one of 1,400 so small.
 */
const SMALLEST_SHARE = 1e-3;

/**
 * What a shop's variances say about the next one, before it is seen: their common level and the degrees of freedom that it is
 * worth. Where days or engines really differ these are few. Infinity says that the variances at hand differ no more than chance
 * makes them, which a handful always may: whoever uses it must not trust it beyond their number. By the moments of their
 * logarithms (Smyth 2004, section 6.2, from memory); where those see no difference, the variances are pooled. `null` with fewer than two.
 *
 * @param variances of groups of repeats, 0 or more
 * @param degreesOfFreedom of each, above 0
 * @example fitPrior([1.2e-5, 3.1e-5, 0.4e-5, 6.4e-5], [2, 2, 2, 2]) // a level, and how far one can count on it
 */
export function fitPrior(
  variances: readonly number[],
  degreesOfFreedom: readonly number[],
): { variance: number; degreesOfFreedom: number } | null {
  const count = variances.length;
  if (degreesOfFreedom.length !== count)
    throw new RangeError(
      `${count} variances have ${degreesOfFreedom.length} degrees of freedom: one each is needed`,
    );
  const wrong = variances.find((variance) => !(variance >= 0 && variance < Number.POSITIVE_INFINITY));
  if (wrong !== undefined) throw new RangeError(`variance is ${wrong}: it must be 0 or more`);
  if (count < 2) return null;
  const floor = SMALLEST_SHARE * (median(variances) || mean(variances));
  if (floor === 0) return { variance: 0, degreesOfFreedom: Number.POSITIVE_INFINITY };
  // Logarithms freed of the lean that few degrees of freedom give them.
  const logs = variances.map(
    (variance, i) => Math.log(Math.max(variance, floor)) - lean(degreesOfFreedom[i]!),
  );
  const level = mean(logs);
  const byChance = mean(degreesOfFreedom.map((df) => trigamma(df / 2)));
  const beyondChance = sampleDeviation(logs)! ** 2 - byChance;
  if (!(beyondChance > 0))
    return { variance: pooled(variances, degreesOfFreedom), degreesOfFreedom: Number.POSITIVE_INFINITY };
  const half = trigammaInverse(beyondChance);
  return { variance: Math.exp(level + lean(2 * half)), degreesOfFreedom: 2 * half };
}

/** One variance of all, each counting by its degrees of freedom. */
function pooled(variances: readonly number[], degreesOfFreedom: readonly number[]): number {
  const all = degreesOfFreedom.reduce((sum, df) => sum + df, 0);
  return variances.reduce((sum, variance, i) => sum + variance * (degreesOfFreedom[i]! / all), 0);
}

/** Mean of ln(chi²(df) / df). */
function lean(df: number): number {
  return digamma(df / 2) - Math.log(df / 2);
}
