/**
 * The value below which a share of some numbers lies, straight between the two nearest of them (the usual rule of statistics programs,
 * "type 7"). Reorders the numbers. Time goes with their count, not with its logarithm: bands take thousands of these.
 * None of the numbers may be NaN; of none at all NaN.
 *
 * @example selectQuantile(Float64Array.of(4, 1, 3, 2), 0.5) // 2.5
 */
export function selectQuantile(values: Float64Array | Float32Array, share: number): number {
  if (values.length === 0) return Number.NaN;
  const place = share * (values.length - 1);
  const whole = Math.floor(place);
  const lower = select(values, whole);
  if (place === whole) return lower;
  let upper = values[whole + 1]!;
  for (let other = whole + 2; other < values.length; other++) upper = Math.min(upper, values[other]!);
  return lower + (place - whole) * (upper - lower);
}

/** Puts at `wanted` what would stand there in order, nothing larger before it, nothing smaller behind (Hoare 1961, from memory). */
function select(values: Float64Array | Float32Array, wanted: number): number {
  let low = 0;
  let high = values.length - 1;
  while (low < high) {
    const pivot = values[wanted]!;
    let left = low;
    let right = high;
    while (left <= right) {
      while (values[left]! < pivot) left++;
      while (values[right]! > pivot) right--;
      if (left > right) break;
      const kept = values[left]!;
      values[left] = values[right]!;
      values[right] = kept;
      left++;
      right--;
    }
    if (right < wanted) low = left;
    if (left > wanted) high = right;
  }
  return values[wanted]!;
}
