import { type ChannelMeaning, MEANINGS } from '@pullbook/core/pull';
import { type Unit, unitFor } from '@pullbook/core/quantity';
import { unitOfSpelling } from '../text/unit-spelling.ts';

/** Unit of a mapped column, `null` where the text is none of its kind; a ratio may go without one. */
export function unitOfMeaning(meaning: ChannelMeaning, unit: string): Unit | null {
  const { kind } = MEANINGS[meaning];
  if (unit.trim() === '') return kind === 'ratio' ? unitFor('', kind) : null;
  return unitOfSpelling(unit, kind) ?? unitFor(unit, kind);
}
