import { camFigures } from './cam-card.ts';
import { compressionRatioFromVolumes, compressionVolumes } from './compression-ratio.ts';
import { fieldWords } from './field-words.ts';
import { FIELDS } from './fields.ts';
import type { CombinationSheet, DerivedFigure, SectionId } from './model.ts';
import { sheetNumber, sheetValue } from './sheet-number.ts';
import { valveLiftFigures } from './valve-lift.ts';

/** Displacement, m³: cylinders × π/4 × bore² × stroke. `displacement(4, 0.086, 0.086)` is 1.998 × 10⁻³. */
export function displacement(cylinders: number, bore: number, stroke: number): number {
  return cylinders * (Math.PI / 4) * bore ** 2 * stroke;
}

/** Mean piston speed, m/s: 2 × stroke × revolutions a second. `meanPistonSpeed(0.086, 5500)` is 15.77. */
export function meanPistonSpeed(stroke: number, engineSpeedRpm: number): number {
  return (2 * stroke * engineSpeedRpm) / 60;
}

/**
 * What follows from a sheet, SI: always the same six figures in the same order, then those of the cam card where the sheet
 * has some of it. A figure whose inputs are unknown has no value and says which input it lacks. Mean piston speed needs an
 * engine speed, r/min.
 */
export function deriveFigures(sheet: CombinationSheet, engineSpeedRpm?: number): DerivedFigure[] {
  const number = (field: string) => sheetNumber(sheet, 'shortBlock', field);
  const entered = (field: string) => sheetValue(sheet, 'shortBlock', field)?.text ?? '';
  const figure = (
    id: DerivedFigure['id'],
    label: string,
    kind: DerivedFigure['kind'],
    compute: () => number,
    from: () => string,
  ): DerivedFigure => {
    const missing = missingInputs(sheet, id);
    return missing === null
      ? { id, label, kind, value: compute(), from: from(), missing }
      : { id, label, kind, value: null, from: '', missing };
  };
  const sweptFrom = () => `π/4 × (${entered('bore')})² × ${entered('stroke')}`;
  const pistonSpeed = figure(
    'meanPistonSpeed',
    'Mean piston speed',
    'speed',
    () => meanPistonSpeed(number('stroke')!, engineSpeedRpm ?? 0),
    () => `2 × ${entered('stroke')} at ${engineSpeedRpm} rpm`,
  );
  const computed = figure(
    'displacement',
    'Displacement',
    'volume',
    () => displacement(number('cylinders')!, number('bore')!, number('stroke')!),
    () => `${entered('cylinders')} × ${sweptFrom()}`,
  );
  const stated = number('displacement');
  return [
    computed.value === null && stated !== null
      ? { ...computed, value: stated, from: `as stated; ${computed.missing}`, missing: null }
      : computed,
    figure(
      'cylinderDisplacement',
      'Displacement of a cylinder',
      'volume',
      () => displacement(1, number('bore')!, number('stroke')!),
      sweptFrom,
    ),
    compressionRatio(sheet),
    engineSpeedRpm === undefined && pistonSpeed.value !== null
      ? { ...pistonSpeed, value: null, from: '', missing: 'no engine speed is given' }
      : pistonSpeed,
    figure(
      'boreToStroke',
      'Bore to stroke',
      'ratio',
      () => number('bore')! / number('stroke')!,
      () => `${entered('bore')} / ${entered('stroke')}`,
    ),
    figure(
      'rodToStroke',
      'Rod length to stroke',
      'ratio',
      () => number('rodLength')! / number('stroke')!,
      () => `${entered('rodLength')} / ${entered('stroke')}`,
    ),
    ...camFigures(sheet),
    ...valveLiftFigures(sheet),
  ];
}

/** The entered ratio where there is one, else from the volumes. */
function compressionRatio(sheet: CombinationSheet): DerivedFigure {
  const base = { id: 'compressionRatio', label: 'Compression ratio', kind: 'ratio' } as const;
  const entered = sheetNumber(sheet, 'shortBlock', 'compressionRatio');
  const volumes = compressionVolumes(sheet);
  const computed = 'missing' in volumes ? null : compressionRatioFromVolumes(volumes);
  const beside = computed === null ? '' : `; the volumes give ${computed.toFixed(2)}`;
  if (entered !== null) return { ...base, value: entered, from: `as entered${beside}`, missing: null };
  if (computed !== null) {
    return { ...base, value: computed, from: 'swept, chamber, gasket, deck and dish volume', missing: null };
  }
  const missing =
    'missing' in volumes
      ? `it is not entered, and for the volumes ${fieldWords(volumes.missing)} ${isOrAre(volumes.missing)} not known`
      : 'it is not entered, and the volumes leave no room above the piston';
  return { ...base, value: null, from: '', missing };
}

/** `bore is not on the sheet`; `null` when nothing is missing. */
function missingInputs(sheet: CombinationSheet, id: DerivedFigure['id']): string | null {
  const needed = FIELDS.filter(({ neededFor }) => neededFor.includes(id));
  const lacking = (present: boolean) =>
    needed
      .filter(({ section, field }) => sheetNumber(sheet, section, field) === null)
      .filter(({ section, field }) => isOnSheet(sheet, section, field) === present)
      .map(({ field }) => field);
  const absent = lacking(false);
  const unknown = lacking(true);
  const parts = [
    absent.length > 0 ? `${fieldWords(absent)} ${isOrAre(absent)} not on the sheet` : '',
    unknown.length > 0 ? `${fieldWords(unknown)} ${isOrAre(unknown)} unknown` : '',
  ].filter((part) => part !== '');
  return parts.length > 0 ? parts.join(', ') : null;
}

const isOnSheet = (sheet: CombinationSheet, section: SectionId, field: string) =>
  sheetValue(sheet, section, field) !== null;

const isOrAre = (names: string[]) => (names.length > 1 ? 'are' : 'is');
