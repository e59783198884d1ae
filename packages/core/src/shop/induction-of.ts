import { type CombinationSheet, isSupercharged } from '../combination/index.ts';
import type { InductionClass } from './model.ts';

/**
 * How an engine is fed, for its scatter: supercharged before carburetted before injected. `null`: the sheet does not say.
 *
 * @example inductionOf(sheet) // 'carburetted', where its fuel system is a `carburettor`
 */
export function inductionOf(sheet: CombinationSheet): InductionClass | null {
  if (isSupercharged(sheet)) return 'supercharged';
  const system = sheet.sections.fuelSystem?.type?.text ?? '';
  if (/carb/i.test(system)) return 'carburetted';
  return /inject/i.test(system) ? 'injected' : null;
}
