import { type CorrectionId, correctionById } from '@pullbook/core/air';
import type { CorrectionApplied } from '@pullbook/core/pull';

/** What the figures are in, as printed: `SAE J1349`, `observed`, `as recorded`. */
export function standardName(applied: Pick<CorrectionApplied, 'standard'>): string {
  if (applied.standard === 'not stated' || applied.standard === 'unknown') return 'as recorded';
  return correctionName(applied.standard);
}

/** Name of a standard as printed on a chart. */
export function correctionName(id: CorrectionId): string {
  return id === 'observed' ? 'observed' : (correctionById(id)?.name ?? id);
}
