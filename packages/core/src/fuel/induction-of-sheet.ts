import { type CombinationSheet, isSupercharged, sheetValue } from '../combination/index.ts';
import type { Induction } from './model.ts';

/** How the engine of a sheet breathes; a supercharger of a kind that is not told is taken for a centrifugal one. */
export function inductionOfSheet(sheet: CombinationSheet): Induction {
  if (!isSupercharged(sheet)) return 'naturally aspirated';
  const type = sheetValue(sheet, 'supercharger', 'type')?.text.toLowerCase() ?? '';
  if (/turbo/u.test(type)) return 'turbocharged';
  return /roots|screw|positive/u.test(type) ? 'positive displacement' : 'centrifugal';
}
