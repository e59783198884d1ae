import type { InductionClass, PullDigest } from './model.ts';

/** Standard normal figures by Box and Muller from a linear congruential generator (Park and Miller 1988). */
export function normalsFrom(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** A pull of 3,000 to 6,000 r/min whose logarithm of power is off by `offset` at every speed. */
export function inventedDigest(offset: number, about: Partial<PullDigest> = {}): PullDigest {
  const { pullId = '', ...rest } = about;
  return {
    pullId,
    engineId: 'engine',
    combinationId: 'combination',
    setUpId: 'set-up',
    sessionId: null,
    day: '2026-03-16',
    cell: 'Cell 1',
    hours: 9,
    induction: 'injected',
    footing: '',
    fromRpm: 3000,
    stepRpm: 250,
    logPower: Array.from({ length: 13 }, (_, node) => 12 + 0.05 * node + offset),
    counts: true,
    ...rest,
  };
}

/** What a simulated shop is made of: standard deviations as shares of power. */
export interface InventedShop {
  engines: number;
  pullsASetUp: number;
  setUpsADay: number;
  daysAnEngine: number;
  cells?: readonly string[];
  induction?: InductionClass;
  pull: number;
  setUp?: number;
  day?: number;
  cell?: number;
  driftPerHour?: number;
}

/** A year of a shop with known spreads: every pull a quarter of an hour after the one before, every day in one cell. */
export function inventedShop(seed: number, shop: InventedShop): PullDigest[] {
  const normal = normalsFrom(seed);
  const cells = (shop.cells ?? ['Cell 1']).map((name) => ({ name, offset: normal() * (shop.cell ?? 0) }));
  const digests: PullDigest[] = [];
  for (let engine = 0; engine < shop.engines; engine++) {
    for (let day = 0; day < shop.daysAnEngine; day++) {
      const cell = cells[day % cells.length]!;
      const ofDay = normal() * (shop.day ?? 0);
      const slope = normal() * (shop.driftPerHour ?? 0);
      let hours = 8;
      for (let setUp = 0; setUp < shop.setUpsADay; setUp++) {
        const ofSetUp = normal() * (shop.setUp ?? 0);
        for (let pull = 0; pull < shop.pullsASetUp; pull++) {
          const offset = cell.offset + ofDay + ofSetUp + slope * hours + normal() * shop.pull;
          const at = String(1 + ((engine * shop.daysAnEngine + day) % 28)).padStart(2, '0');
          digests.push(
            inventedDigest(offset, {
              pullId: `${engine}-${day}-${setUp}-${pull}`,
              engineId: `engine ${engine}`,
              combinationId: `combination ${engine}`,
              setUpId: `${engine}-${day}-${setUp}`,
              day: `20${10 + day}-${String(1 + (engine % 12)).padStart(2, '0')}-${at}`,
              cell: cell.name,
              hours,
              induction: shop.induction ?? 'injected',
            }),
          );
          hours += 0.25;
        }
      }
    }
  }
  return digests;
}
