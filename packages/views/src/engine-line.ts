import { type CombinationSheet, deriveFigures, type SectionId } from '@pullbook/core/combination';
import { formatNumber, toInside } from '@pullbook/core/quantity';
import type { ViewOptions } from './model.ts';

/** `3.8 L straight six`; what the sheet does not say is left out. */
export function engineText(sheet: CombinationSheet, { decimalMark }: ViewOptions): string {
  const displacement = deriveFigures(sheet).find(({ id }) => id === 'displacement')?.value ?? null;
  const litres =
    displacement === null
      ? ''
      : `${formatNumber(displacement / toInside(1, 'L', 'volume'), 1, decimalMark)}\u00a0L`;
  return [litres, textOf(sheet, 'shortBlock', 'configuration')].filter(Boolean).join(' ');
}

/** `gasoline`; '' where the sheet does not say. */
export const fuelText = (sheet: CombinationSheet): string => textOf(sheet, 'fuel', 'name');

/** `centrifugal supercharger`; a turbocharger is already one word. */
export function superchargerText(sheet: CombinationSheet): string {
  const type = textOf(sheet, 'supercharger', 'type');
  if (type === '') return 'supercharger of unknown type';
  return /charger/i.test(type) ? type : `${type} supercharger`;
}

function textOf(sheet: CombinationSheet, section: SectionId, field: string): string {
  const text = sheet.sections[section]?.[field]?.text ?? '';
  return /^unknown$/i.test(text) ? '' : text;
}
