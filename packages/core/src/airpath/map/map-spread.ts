import type { Origin } from '../../quantity/index.ts';
import type { CompressorMap, FittedMap, MapQuality } from '../model.ts';

/**
 * What a table leaves open, by where it is from: one unit against another of the same model, and how well a table was read. Shares; of
 * the efficiency absolute. Common practice, no source.
 */
const BY_ORIGIN: Record<'sure' | 'read' | 'loose', FittedMap['spread']> = {
  sure: { head: 0.015, efficiency: 0.01, flow: 0.01 },
  read: { head: 0.025, efficiency: 0.015, flow: 0.02 },
  loose: { head: 0.06, efficiency: 0.04, flow: 0.05 },
};

const SURE: ReadonlySet<Origin> = new Set<Origin>(['measured', 'data sheet', 'computed']);

/** Of the efficiency where the table gives none; of the head where there is one line. */
const GUESSED_EFFICIENCY_SPREAD = 0.05;
const ONE_LINE_SPREAD = 0.04;

/** One standard deviation of what a fitted table leaves open: its origin and how it meets its own points. */
export function spreadOfTable(map: CompressorMap, quality: MapQuality): FittedMap['spread'] {
  const base =
    BY_ORIGIN[SURE.has(map.origin) ? 'sure' : map.origin === 'read off a picture' ? 'read' : 'loose'];
  return {
    head: Math.hypot(base.head, quality.pressureRatioRms, quality.lines.length === 1 ? ONE_LINE_SPREAD : 0),
    efficiency: Math.hypot(base.efficiency, quality.efficiencyRms ?? GUESSED_EFFICIENCY_SPREAD),
    flow: Math.hypot(base.flow, quality.pressureRatioRms),
  };
}
