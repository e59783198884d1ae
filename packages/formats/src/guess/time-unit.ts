import { toInside } from '@pullbook/core/quantity';

/** Slowest step test and fastest sweep, r/min per second (common practice, no source). */
const SWEPT_RPM_PER_S = [4, 3000] as const;
const UNITS = ['s', 'ms', 'min'] as const;

/**
 * Unit of a time that names none: the first under which the engine crosses its speeds as fast as engines do. Without
 * engine speed, steps of 2 and more are milliseconds.
 *
 * @param sweptRpm  width of the engine speeds of the file, r/min; `null`: it has none
 */
export function timeUnit(
  { values, low, high }: { values: Float64Array; low: number; high: number },
  sweptRpm: number | null,
): (typeof UNITS)[number] {
  const usual = UNITS.find((unit) => {
    const rate = (sweptRpm ?? Number.NaN) / toInside(high - low, unit, 'time');
    return rate >= SWEPT_RPM_PER_S[0] && rate <= SWEPT_RPM_PER_S[1];
  });
  return usual ?? (stepOf(values) >= 2 ? 'ms' : 's');
}

function stepOf(values: Float64Array): number {
  const steps: number[] = [];
  for (let row = 1; row < Math.min(values.length, 200); row++) {
    const step = (values[row] as number) - (values[row - 1] as number);
    if (step > 0) steps.push(step);
  }
  return steps.sort((a, b) => a - b)[steps.length >> 1] ?? 0;
}
