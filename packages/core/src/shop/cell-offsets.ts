import { mean, studentTQuantile } from '../numeric/index.ts';
import type { ScatterHistory } from '../scatter/index.ts';
import type { VarianceSeen } from './blend-variance.ts';
import type { Cluster } from './clusters.ts';
import { groupedBy } from './grouped-by.ts';
import type { ShopFigures } from './model.ts';
import { levelsOver, sharedProfile } from './profile.ts';

type CellOffset = ShopFigures['cellOffsets'][number];

/** One engine's word on two cells: the logarithm of their ratio, and its variance. */
interface EngineOffset {
  engine: string;
  between: string;
  log: number;
  variance: number;
}

/**
 * Cell against cell, from engines that were pulled in both in the same combination, tune and standard. Every engine is one
 * look, whatever its pulls; engines that disagree more than their scatter allows widen the band (Birge 1932). 95 %.
 *
 * @example cellOffsetsOf(clusters, history, pullVariance) // [{ from: 'Cell 1', to: 'Cell 2', ratio: 0.021, low: 0.004, … }]
 */
export function cellOffsetsOf(
  clusters: readonly Cluster[],
  spreads: Pick<ScatterHistory, 'setUp' | 'day'>,
  pullVariance: (cluster: Cluster) => number,
): (CellOffset & { logVariance: number })[] {
  const ofCombination = groupedBy(clusters, (one) =>
    one.cell === null ? null : `${one.combinationId}\n${one.footing}`,
  );
  const looks = ofCombination.flatMap((own) => offsetsOf(own, spreads, pullVariance));
  return groupedBy(looks, ({ between }) => between).map((ofPair) => {
    const engines = groupedBy(ofPair, ({ engine }) => engine).map((own) => ({
      log: mean(own.map(({ log }) => log)),
      // Combinations of one engine share its days: averaging them makes nothing surer.
      variance: mean(own.map(({ variance }) => variance)),
    }));
    const precision = engines.reduce((sum, one) => sum + 1 / one.variance, 0);
    const log = engines.reduce((sum, one) => sum + one.log / one.variance, 0) / precision;
    const misfit = engines.reduce((sum, one) => sum + (one.log - log) ** 2 / one.variance, 0);
    const logVariance = Math.max(1, misfit / Math.max(1, engines.length - 1)) / precision;
    const degrees = spreads.day.degreesOfFreedom + engines.length - 1;
    const half = studentTQuantile(0.975, degrees) * Math.sqrt(logVariance);
    const [from, to] = ofPair[0]!.between.split('\n') as [string, string];
    return {
      from,
      to,
      ratio: Math.expm1(log),
      low: Math.expm1(log - half),
      high: Math.expm1(log + half),
      engines: engines.length,
      logVariance,
    };
  });
}

/** Offsets as looks at the variance of one cell: that of a difference is twice as large. */
export function cellsSeen(offsets: readonly (CellOffset & { logVariance: number })[]): VarianceSeen[] {
  return offsets.map(({ ratio, logVariance }) => ({
    square: Math.log1p(ratio) ** 2 / 2,
    degreesOfFreedom: 1,
    nuisance: logVariance / 2,
  }));
}

function offsetsOf(
  own: readonly Cluster[],
  spreads: Pick<ScatterHistory, 'setUp' | 'day'>,
  pullVariance: (cluster: Cluster) => number,
): EngineOffset[] {
  const shared = sharedProfile(own.map(({ profile }) => profile));
  if (shared === null) return [];
  const levels = levelsOver(
    own.map(({ profile }) => profile),
    shared,
  );
  const cells = groupedBy(
    own.map((cluster, at) => ({ cluster, level: levels[at]! })),
    ({ cluster }) => cluster.cell,
  )
    .map((ofCell) => ({
      cell: ofCell[0]!.cluster.cell!,
      log: mean(ofCell.map(({ level }) => level)),
      variance:
        mean(
          ofCell.map(
            ({ cluster }) =>
              pullVariance(cluster) / cluster.pulls.length +
              spreads.setUp.sigma ** 2 +
              spreads.day.sigma ** 2,
          ),
        ) / ofCell.length,
    }))
    .toSorted((one, other) => one.cell.localeCompare(other.cell, 'en'));
  return cells.flatMap((first, at) =>
    cells.slice(at + 1).map((second) => ({
      engine: own[0]!.engineId ?? own[0]!.combinationId,
      between: `${first.cell}\n${second.cell}`,
      log: second.log - first.log,
      variance: first.variance + second.variance,
    })),
  );
}
