/**
 * Centres as near as can be to the wanted ones, with nothing overlapping and all between top and bottom: neighbours
 * that would overlap are pooled and share their shift (the pool-adjacent-violators algorithm of isotonic regression).
 * The order of the wanted centres is kept. Where the heights together exceed the room, they stack from the top.
 */
export function spread(
  wanted: readonly number[],
  heights: readonly number[],
  [top, bottom]: readonly [top: number, bottom: number],
): number[] {
  const order = wanted
    .map((_, index) => index)
    .sort((one, other) => (wanted[one] ?? 0) - (wanted[other] ?? 0) || one - other);
  interface Pool {
    members: number[];
    /** Top edge of the pool, as its members would like it on average. */
    edge: number;
    height: number;
  }
  const pools: Pool[] = [];
  for (const index of order) {
    const height = heights[index] ?? 0;
    let pool: Pool = { members: [index], edge: (wanted[index] ?? 0) - height / 2, height };
    for (let above = pools.at(-1); above && above.edge + above.height > pool.edge; above = pools.at(-1)) {
      pools.pop();
      const count = above.members.length + pool.members.length;
      const edge =
        (above.edge * above.members.length + (pool.edge - above.height) * pool.members.length) / count;
      pool = { members: [...above.members, ...pool.members], edge, height: above.height + pool.height };
    }
    pools.push(pool);
  }

  const centres = wanted.map(() => 0);
  let free = top;
  let left = pools.reduce((sum, pool) => sum + pool.height, 0);
  for (const pool of pools) {
    let edge = Math.max(free, Math.min(pool.edge, bottom - left));
    left -= pool.height;
    for (const index of pool.members) {
      const height = heights[index] ?? 0;
      centres[index] = edge + height / 2;
      edge += height;
    }
    free = edge;
  }
  return centres;
}
