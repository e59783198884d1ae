import { figureOf, numberFigure, percentFigure } from '../quantity/index.ts';
import { type Remark, remark, said } from '../remark/index.ts';
import { camCardRemarks } from './cam-card-remarks.ts';
import { compressionRatioFromVolumes, compressionVolumes } from './compression-ratio.ts';
import { displacement } from './derive-figures.ts';
import { flowRemarks } from './flow-sheet.ts';
import type { CombinationSheet } from './model.ts';
import { sheetNumber } from './sheet-number.ts';

/** Entered and computed compression ratio may differ by this much. Common practice, no source. */
const COMPRESSION_RATIO_TOLERANCE = 0.15;

/** A stated displacement is rounded, seldom by more than this share. Common practice, no source. */
const DISPLACEMENT_TOLERANCE = 0.04;

/**
 * What the values of a sheet say of each other: stated displacement against bore and stroke, compression ratio against its
 * volumes, durations without their lift, a cam card against its events, flow against what a curtain lets through.
 */
export function remarksOnSheet(sheet: CombinationSheet): Remark[] {
  return [
    ...displacementRemarks(sheet),
    ...compressionRatioRemarks(sheet),
    ...durationRemarks(sheet),
    ...camCardRemarks(sheet),
    ...flowRemarks(sheet),
  ];
}

function displacementRemarks(sheet: CombinationSheet): Remark[] {
  const [stated, cylinders, bore, stroke] = ['displacement', 'cylinders', 'bore', 'stroke'].map((field) =>
    sheetNumber(sheet, 'shortBlock', field),
  );
  if (stated == null || cylinders == null || bore == null || stroke == null) return [];
  const computed = displacement(cylinders, bore, stroke);
  if (Math.abs(computed / stated - 1) <= DISPLACEMENT_TOLERANCE) return [];
  const cm3 = (value: number) => figureOf(value, 'volume', { plain: `${(value * 1e6).toFixed(0)} cm³` });
  const message = said`shortBlock.displacement: stated is ${cm3(stated)}, cylinders, bore and stroke give ${cm3(computed)}; they may differ by ${percentFigure(DISPLACEMENT_TOLERANCE)}. The computed one is used: look for a slip in one of the four.`;
  return [remark('caution', 'displacement-disagrees', message)];
}

function compressionRatioRemarks(sheet: CombinationSheet): Remark[] {
  const entered = sheetNumber(sheet, 'shortBlock', 'compressionRatio');
  const volumes = compressionVolumes(sheet);
  if ('missing' in volumes) return [];
  const computed = compressionRatioFromVolumes(volumes);
  if (computed === null) {
    const message =
      'heads.chamberVolume, shortBlock.gasketThickness, deckClearance and pistonDishVolume leave no room above the piston. Check their signs: a dome is a negative dish, a piston above the deck a negative deck clearance.';
    return [remark('caution', 'no-clearance-volume', message)];
  }
  if (entered === null || Math.abs(entered - computed) <= COMPRESSION_RATIO_TOLERANCE) return [];
  const message = said`shortBlock.compressionRatio: entered is ${numberFigure(entered, 2)}, the volumes give ${numberFigure(computed, 2)}; they may differ by ${numberFigure(COMPRESSION_RATIO_TOLERANCE, 2)}. The entered one is used: check it, or the chamber, gasket, deck and dish volumes.`;
  return [remark('note', 'compression-ratio-disagrees', message)];
}

function durationRemarks(sheet: CombinationSheet): Remark[] {
  const told = ['durationIntake', 'durationExhaust'].some(
    (field) => sheetNumber(sheet, 'cam', field) !== null,
  );
  if (!told || sheetNumber(sheet, 'cam', 'durationLift') !== null) return [];
  const message =
    'cam: a duration is given without the lift at which it is told (cam.durationLift), so it cannot be compared with another cam. Add it, for example "durationLift: 1 mm".';
  return [remark('note', 'duration-without-lift', message)];
}
