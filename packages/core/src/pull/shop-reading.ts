import { speedFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import type { Cell, GriddedCurve, Pull, Recipe } from './model.ts';

/** What the shop has to say about the reading of its pulls, where a pull says nothing itself. */
export interface ShopReading {
  /** r/min; `null`: adapted to the sampling */
  binWidthRpm: number | null;
  /** The cells that are described; pulls name them. */
  cells: readonly Cell[];
}

/** A shop that never said anything. */
export const SILENT_SHOP: ShopReading = Object.freeze({ binWidthRpm: null, cells: Object.freeze([]) });

/**
 * The described cell that a pull or session names, spaces round it and capitals forgiven; `null`: named nowhere, or not
 * described.
 *
 * @example cellNamed(cells, ' Cell 1')?.altitude // 210
 */
export function cellNamed(cells: readonly Cell[], name: string | null): Cell | null {
  const wanted = plain(name ?? '');
  return wanted === '' ? null : (cells.find((cell) => plain(cell.name) === wanted) ?? null);
}

const plain = (name: string): string => name.trim().toLowerCase();

/** A recipe that asks for no width, with the shop's. What the recipe or the pull's own treatment asks for stands. */
export function withShopWidth(recipe: Recipe, shop: ShopReading): Recipe {
  return recipe.binWidthRpm === 'adapted' && shop.binWidthRpm !== null
    ? { ...recipe, binWidthRpm: shop.binWidthRpm }
    : recipe;
}

/** Says that the width is the shop's, where it is in force: a setting made long ago must not work unseen. */
export function shopWidthRemarks(
  before: Recipe,
  recipe: Recipe,
  kindOfRows: GriddedCurve['kindOfRows'],
): Remark[] {
  if (before.binWidthRpm === recipe.binWidthRpm || kindOfRows === 'points') return [];
  const width = speedFigure(recipe.binWidthRpm as number);
  return [remark('note', 'bin-width-of-shop', said`Bins of ${width}, as the shop's settings have them.`)];
}

/** The pull with the height of its cell in its weather, where the weather has none: for the cross-check of the barometer. */
export function withAltitudeOfCell(pull: Pull, cell: Cell | null): Pull {
  if (pull.weather === null || pull.weather.altitude !== null || cell === null) return pull;
  return { ...pull, weather: { ...pull.weather, altitude: cell.altitude } };
}
