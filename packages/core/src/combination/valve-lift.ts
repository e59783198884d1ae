import { fieldWords } from './field-words.ts';
import type { CombinationSheet, DerivedFigure, SheetValue } from './model.ts';
import { sheetValue } from './sheet-number.ts';

/** Lift at the valve, m: lobe lift × rocker ratio − lash. `valveLift(0.007, 1.6, 0.0003)` is 0.0109. */
export function valveLift(lobeLift: number, rockerRatio: number, lash: number): number {
  return lobeLift * rockerRatio - lash;
}

/** Valve lifts that follow from the lobes; left out where no lobe lift is on the sheet. The true ratio moves with the lift. */
export function valveLiftFigures(sheet: CombinationSheet): DerivedFigure[] {
  return (['Intake', 'Exhaust'] as const).flatMap((side): DerivedFigure[] => {
    const lobe = sheetValue(sheet, 'cam', `lobeLift${side}`);
    if (lobe === null) return [];
    const own = side === 'Exhaust' ? sheetValue(sheet, 'heads', 'rockerRatioExhaust') : null;
    const rocker = own ?? sheetValue(sheet, 'heads', 'rockerRatio');
    const base = {
      id: `valveLift${side}`,
      label: `${side} valve lift from the lobe`,
      kind: 'length',
    } as const;
    if (lobe.value === null || rocker?.value == null) {
      const lacking = lobe.value === null ? `lobeLift${side}` : 'rockerRatio';
      return [{ ...base, value: null, from: '', missing: `not known: ${fieldWords([lacking])}` }];
    }
    const lash = sheetValue(sheet, 'cam', `lash${side}`);
    const value = valveLift(lobe.value, rocker.value, lash?.value ?? 0);
    return [{ ...base, value, from: `${lobe.text} × ${rocker.text}${lashText(lash)}`, missing: null }];
  });
}

const lashText = (lash: SheetValue | null): string =>
  lash?.value == null ? ', without lash, which is not known' : ` − ${lash.text}`;
