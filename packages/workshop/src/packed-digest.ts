import type { Pull } from '@pullbook/core/pull';
import type { PullDigest } from '@pullbook/core/shop';

/** Of a digest what follows from the curve. */
type CurveDigest = Pick<PullDigest, 'fromRpm' | 'stepRpm' | 'logPower'>;

/** As it is kept: first speed, step, then the logarithms of power. */
export function packedDigest({ fromRpm, stepRpm, logPower }: CurveDigest): Float64Array {
  return Float64Array.of(fromRpm, stepRpm, ...logPower.map((value) => value ?? Number.NaN));
}

/** Inverse of `packedDigest`. */
export function unpackedDigest(values: Float64Array): CurveDigest {
  const logPower: (number | null)[] = new Array(values.length - 2);
  for (let node = 2; node < values.length; node++) {
    const value = values[node]!;
    logPower[node - 2] = Number.isNaN(value) ? null : value;
  }
  return { fromRpm: values[0]!, stepRpm: values[1]!, logPower };
}

/** What makes pulls no repeats of each other though the hardware is the same: what was tuned, and their standard. */
export function runAsText(tune: Pull['tune'], standard: string): string {
  const { notes: _, fuelBatch: __, ...tuned } = tune;
  return JSON.stringify([
    standard,
    ...Object.entries(tuned).toSorted(([one], [other]) => (one < other ? -1 : 1)),
  ]);
}
