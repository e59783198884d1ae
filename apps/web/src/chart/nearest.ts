/** Index of the place nearest to a value; the places ascend. */
export function nearest(places: readonly number[], value: number): number {
  let low = 0;
  let high = places.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (places[middle]! <= value) low = middle;
    else high = middle;
  }
  return Math.abs(places[high]! - value) < Math.abs(places[low]! - value) ? high : low;
}

/** First and last of the places within a range; the nearest one where none is. */
export function placesWithin(
  places: readonly number[],
  [low, high]: readonly [number, number],
): [number, number] {
  let first = nearest(places, low);
  let last = nearest(places, high);
  if (places[first]! < low && first < last) first += 1;
  if (places[last]! > high && last > first) last -= 1;
  return [first, last];
}
