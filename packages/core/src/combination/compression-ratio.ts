import type { CombinationSheet } from './model.ts';
import { sheetNumber } from './sheet-number.ts';

/** What the clearance volume is built from, m³ a cylinder. */
export interface CompressionVolumes {
  swept: number;
  chamber: number;
  gasket: number;
  deck: number;
  /** A dome is negative. */
  dish: number;
}

/**
 * Compression ratio of a cylinder from its parts, 1: (swept + clearance) / clearance.
 *
 * The ring land's crevice is left out, as on a builder's sheet. `null` when the parts leave no clearance.
 */
export function compressionRatioFromVolumes({
  swept,
  chamber,
  gasket,
  deck,
  dish,
}: CompressionVolumes): number | null {
  const clearance = chamber + gasket + deck + dish;
  return clearance > 0 ? (swept + clearance) / clearance : null;
}

/** The parts of a sheet's clearance volume, or the names of the fields that are not known. */
export function compressionVolumes(sheet: CombinationSheet): CompressionVolumes | { missing: string[] } {
  const numbers = {
    bore: sheetNumber(sheet, 'shortBlock', 'bore'),
    stroke: sheetNumber(sheet, 'shortBlock', 'stroke'),
    chamberVolume: sheetNumber(sheet, 'heads', 'chamberVolume'),
    gasketBore: sheetNumber(sheet, 'shortBlock', 'gasketBore'),
    gasketThickness: sheetNumber(sheet, 'shortBlock', 'gasketThickness'),
    deckClearance: sheetNumber(sheet, 'shortBlock', 'deckClearance'),
    pistonDishVolume: sheetNumber(sheet, 'shortBlock', 'pistonDishVolume'),
  };
  const missing = Object.entries(numbers).flatMap(([field, value]) => (value === null ? [field] : []));
  if (missing.length > 0) return { missing };
  const circle = (diameter: number) => (Math.PI / 4) * diameter ** 2;
  return {
    swept: circle(numbers.bore!) * numbers.stroke!,
    chamber: numbers.chamberVolume!,
    gasket: circle(numbers.gasketBore!) * numbers.gasketThickness!,
    deck: circle(numbers.bore!) * numbers.deckClearance!,
    dish: numbers.pistonDishVolume!,
  };
}
