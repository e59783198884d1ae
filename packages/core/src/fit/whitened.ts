import { choleskyOf, solveWith } from '../numeric/index.ts';
import type { ChannelReadings } from './readings-on-nodes.ts';

/** Rows of all channels' readings; with the covariance L Lᵀ of each they are L⁻¹ of what is told, of spread 1 and independent. */
export function whitenedRows(
  channels: readonly ChannelReadings[],
  triangles: readonly number[][][],
  told: (channel: ChannelReadings, reading: ChannelReadings['readings'][number]) => number,
): Float64Array {
  const out = new Float64Array(channels.reduce((sum, { readings }) => sum + readings.length, 0));
  let from = 0;
  channels.forEach((channel, place) => {
    const lower = triangles[place]!;
    channel.readings.forEach((reading, line) => {
      let rest = told(channel, reading);
      for (let column = 0; column < line; column++) rest -= lower[line]![column]! * out[from + column]!;
      out[from + line] = rest / lower[line]![line]!;
    });
    from += channel.readings.length;
  });
  return out;
}

/** Product of two rows, one value with the other. */
export function dot(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let sum = 0;
  for (let place = 0; place < one.length; place++) sum += one[place]! * other[place]!;
  return sum;
}

/** Of a symmetric matrix that is positive definite. */
export function inverseOf(matrix: readonly number[][]): number[][] {
  const triangle = choleskyOf(matrix);
  return matrix.map((_, i) =>
    solveWith(
      triangle,
      matrix.map((__, j) => (i === j ? 1 : 0)),
    ),
  );
}
