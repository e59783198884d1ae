import type { CombinationSheet } from '../../combination/index.ts';
import { sheetNumber } from '../../combination/index.ts';
import { percentFigure } from '../../quantity/index.ts';
import { accepted, type Remark, type Result, refused, remark, said } from '../../remark/index.ts';
import { wrapOfPulleys } from '../drive/belt.ts';
import type { Drive, StatedModel } from '../model.ts';
import { wordsOf } from './sheet-words.ts';
import type { Taken } from './taken.ts';

/** Creep and slip where nobody measured it, and one standard deviation of that (common practice, no source). */
export const USUAL_SLIP: Record<Drive['kind'], { share: number; spread: number }> = {
  'ribbed belt': { share: 0.01, spread: 0.007 },
  'V belt': { share: 0.02, spread: 0.01 },
  'toothed belt': { share: 0, spread: 0 },
  chain: { share: 0, spread: 0 },
  gear: { share: 0, spread: 0 },
  direct: { share: 0, spread: 0 },
};

/** Gears and bearings of a geared centrifugal unit (common practice, no source). */
const USUAL_MECHANICAL_EFFICIENCY = 0.95;
/** r/min by which a limiter is overrun (common practice, no source). */
const USUAL_OVER_REV_RPM = 200;

/** The drive from crankshaft to impeller as the sheet tells it, or why it cannot be known. */
export function driveOfSheet(sheet: CombinationSheet, stated: StatedModel, taken: Taken): Result<Drive> {
  const kind = kindOf(sheet, taken);
  const ratio = pulleyRatioOf(sheet, stated, kind);
  if (!ratio.ok) return ratio;
  const stepUp = stated.stepUp ?? sheetNumber(sheet, 'supercharger', 'stepUp');
  if (stepUp === null) return refused(NO_STEP_UP);
  if (!(stepUp > 0)) return refused(notAboveZero('The step-up', stepUp));
  const crankPulleyDiameter = sheetNumber(sheet, 'drive', 'crankPulleyDiameter');
  const blowerPulleyDiameter = sheetNumber(sheet, 'drive', 'blowerPulleyDiameter');
  return accepted({
    kind,
    pulleyRatio: ratio.value,
    stepUp,
    slip: slipOf(sheet, stated, kind, taken),
    mechanicalEfficiency: taken.first(
      [stated.mechanicalEfficiency, sheetNumber(sheet, 'supercharger', 'mechanicalEfficiency')],
      () => ({
        value: USUAL_MECHANICAL_EFFICIENCY,
        because: remark(
          'note',
          'mechanical-efficiency-assumed',
          said`The mechanical efficiency of the supercharger's gears and bearings is not on the sheet: ${percentFigure(USUAL_MECHANICAL_EFFICIENCY)} is taken (common practice, no source).`,
        ),
      }),
    ),
    crankPulleyDiameter,
    blowerPulleyDiameter,
    wrapAngle: sheetNumber(sheet, 'drive', 'wrapAngle') ?? wrapFromCentres(sheet),
    ribs: sheetNumber(sheet, 'drive', 'beltRibs'),
    maximumImpellerSpeedRpm: sheetNumber(sheet, 'supercharger', 'maximumImpellerSpeed'),
    engineSpeedLimitRpm: sheetNumber(sheet, 'ignition', 'engineSpeedLimit'),
    overRevMarginRpm: sheetNumber(sheet, 'ignition', 'overRevMargin') ?? USUAL_OVER_REV_RPM,
  });
}

function kindOf(sheet: CombinationSheet, taken: Taken): Drive['kind'] {
  const words = wordsOf(sheet, 'drive', 'type');
  const told: [RegExp, Drive['kind']][] = [
    [/tooth|cog|synchron/, 'toothed belt'],
    [/rib/, 'ribbed belt'],
    [/\bv\b|v-?belt/, 'V belt'],
    [/chain/, 'chain'],
    [/gear/, 'gear'],
    [/direct/, 'direct'],
  ];
  const known = told.find(([pattern]) => pattern.test(words))?.[1] ?? null;
  const teeth = sheetNumber(sheet, 'drive', 'crankPulleyTeeth') === null ? null : 'toothed belt';
  const ribs = sheetNumber(sheet, 'drive', 'beltRibs') === null ? null : 'ribbed belt';
  return taken.first<Drive['kind']>([known, teeth, ribs] as (Drive['kind'] | null)[], () => ({
    value: 'ribbed belt',
    because: remark(
      'note',
      'drive-kind-assumed',
      'The kind of drive is not on the sheet: a ribbed belt is taken. Enter it under drive, type.',
    ),
  }));
}

function pulleyRatioOf(sheet: CombinationSheet, stated: StatedModel, kind: Drive['kind']): Result<number> {
  if (stated.pulleyRatio !== undefined)
    return stated.pulleyRatio > 0
      ? accepted(stated.pulleyRatio)
      : refused(notAboveZero('The pulley ratio', stated.pulleyRatio));
  if (kind === 'direct') return accepted(1);
  const pairs = [
    ['crankPulleyTeeth', 'blowerPulleyTeeth'],
    ['crankPulleyDiameter', 'blowerPulleyDiameter'],
  ] as const;
  for (const [ofCrank, ofBlower] of pairs) {
    const crank = sheetNumber(sheet, 'drive', ofCrank);
    const blower = sheetNumber(sheet, 'drive', ofBlower);
    if (crank === null || blower === null) continue;
    if (!(crank > 0)) return refused(notAboveZero('The crank pulley', crank));
    if (!(blower > 0)) return refused(notAboveZero('The blower pulley', blower));
    return accepted(crank / blower);
  }
  return refused(NO_PULLEYS);
}

function slipOf(sheet: CombinationSheet, stated: StatedModel, kind: Drive['kind'], taken: Taken): number {
  const { share, spread } = USUAL_SLIP[kind];
  if (spread === 0) return 0;
  return taken.first([stated.slip, sheetNumber(sheet, 'drive', 'slip')], () => ({
    value: share,
    because: remark(
      'note',
      'slip-assumed',
      said`Creep and slip of the belt are not known: ${percentFigure(share, 1)} is taken, ±${percentFigure(2 * spread, 1)} in the band (a sound ${kind} creeps 0.5 to 2 %; common practice, no source). A shaft-speed pick-up would tell.`,
    ),
  }));
}

function wrapFromCentres(sheet: CombinationSheet): number | null {
  const large = sheetNumber(sheet, 'drive', 'crankPulleyDiameter');
  const small = sheetNumber(sheet, 'drive', 'blowerPulleyDiameter');
  const apart = sheetNumber(sheet, 'drive', 'centreDistance');
  if (large === null || small === null || apart === null) return null;
  return 2 * apart > large + small ? wrapOfPulleys(large, small, apart) : null;
}

const notAboveZero = (what: string, value: number): Remark =>
  remark(
    'refusal',
    'drive-not-above-zero',
    `${what} is ${value}; it must be above zero, or the impeller does not turn. Mend it on the sheet under drive.`,
  );

const NO_PULLEYS = remark(
  'refusal',
  'no-pulleys',
  'Crank and blower pulley are not both on the sheet, so the speed of the impeller is not known. Enter both diameters (or both numbers of teeth) under drive.',
);

const NO_STEP_UP = remark(
  'refusal',
  'no-step-up',
  'The step-up of the supercharger is not on the sheet, so the speed of the impeller is not known. Enter it under supercharger, step-up; 1 where the impeller turns with its pulley.',
);
