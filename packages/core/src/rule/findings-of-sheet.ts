import {
  type CombinationSheet,
  deriveFigures,
  displacement,
  FLOW_FIELDS,
  flowPoints,
  isSupercharged,
  remarksOnSheet,
} from '../combination/index.ts';
import { figureOf, INCH, percentFigure, rangeOf } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import type { Finding, RuleThresholds } from './model.ts';
import { sheetNumber, sheetText } from './sheet-words.ts';
import { type Speaker, speakerOf } from './speaker.ts';
import { findingsOfRemarks } from './wrapped-remarks.ts';

/** Lift at which overlap has its limit, within what people round to, m. */
const OVERLAP_LIFT = 0.05 * INCH;
const SAME_LIFT = 5e-5;

/**
 * What the rules say of a sheet by itself. `subject`: `combination <id>`. What a sheet can be driven to is asked of a pull, or
 * of a plan (`hardwareFindings`).
 */
export function findingsOfSheet(
  sheet: CombinationSheet,
  subject: string,
  thresholds: RuleThresholds = {},
): Finding[] {
  const speaker = speakerOf(subject, thresholds);
  return [
    ...findingsOfRemarks(remarksOnSheet(sheet), speaker),
    ...statedDisplacement(sheet, speaker),
    ...cam(sheet, speaker),
    ...flow(sheet, speaker),
    ...effectiveness(sheet, speaker),
  ];
}

function statedDisplacement(sheet: CombinationSheet, { limit, find }: Speaker): Finding[] {
  // A large difference has its own remark, which stands for this rule already.
  if (remarksOnSheet(sheet).some(({ code }) => code === 'displacement-disagrees')) return [];
  const [stated, cylinders, bore, stroke] = ['displacement', 'cylinders', 'bore', 'stroke'].map((field) =>
    sheetNumber(sheet, 'shortBlock', field),
  );
  if (stated == null || cylinders == null || bore == null || stroke == null) return [];
  const computed = displacement(cylinders, bore, stroke);
  const value = stated / computed - 1;
  const threshold = Math.max(limit('V37.share'), roundingOf(sheetText(sheet, 'shortBlock', 'displacement')));
  if (!(Math.abs(value) > threshold)) return [];
  return [
    find('V37', {
      input: 'Displacement, bore and stroke',
      kind: 'volume',
      value: stated,
      threshold: computed,
      said: said`Stated is ${figureOf(stated, 'volume')}, cylinders, bore and stroke give ${figureOf(computed, 'volume')}, ${percentFigure(Math.abs(value), 1)} apart; ${percentFigure(threshold, 1)} is let pass. The computed one is used: overbored, or a slip in one of the four.`,
    }),
  ];
}

/** Half of the last digit written, as a share: `3.8 L` is told to 1.3 %. */
function roundingOf(text: string): number {
  const digits = /(\d+)(?:[.,](\d+))?/.exec(text);
  const written = digits === null ? Number.NaN : Number(`${digits[1]}.${digits[2] ?? ''}`);
  return written > 0 ? (0.5 * 10 ** -(digits![2]?.length ?? 0)) / written : 0;
}

function cam(sheet: CombinationSheet, { limit, find }: Speaker): Finding[] {
  const separation = sheetNumber(sheet, 'cam', 'lobeSeparation');
  const overlap = deriveFigures(sheet).find(({ id }) => id === 'overlap')?.value ?? null;
  const lift = sheetNumber(sheet, 'cam', 'eventsLift') ?? sheetNumber(sheet, 'cam', 'durationLift');
  const [low, high] = [limit('V23.separationLow'), limit('V23.separationHigh')];
  const findings: Finding[] = [];
  if (separation !== null && (separation < low - 1e-9 || separation > high + 1e-9))
    findings.push(
      find('V23', {
        input: 'Lobe separation',
        kind: 'angle',
        value: separation,
        threshold: separation < low ? low : high,
        said: said`A lobe separation of ${figureOf(separation, 'angle')} is outside ${rangeOf(low, high, 'angle', ' to ', { decimals: 0 })}, where cams are sold. It is kept: look whether degrees of the crank were entered.`,
      }),
    );
  const most = limit('V23.overlapBoosted');
  const isAtLift = lift !== null && Math.abs(lift - OVERLAP_LIFT) <= SAME_LIFT;
  if (overlap !== null && isAtLift && isSupercharged(sheet) && overlap > most + 1e-9)
    findings.push(
      find('V23', {
        input: 'Overlap and supercharger',
        kind: 'angle',
        value: overlap,
        threshold: most,
        said: said`The overlap is ${figureOf(overlap, 'angle')} at ${figureOf(OVERLAP_LIFT, 'length')}; with a supercharger ${figureOf(most, 'angle')} is about the most on the road. More blows charge into the exhaust.`,
      }),
    );
  return findings;
}

function flow(sheet: CombinationSheet, { limit, find }: Speaker): Finding[] {
  const allowed = limit('V24.fall');
  return FLOW_FIELDS.flatMap((field) => {
    const points = flowPoints(sheet, field);
    const falls = points.flatMap((point, index) => {
      const before = points[index - 1];
      return before !== undefined && before.flow > 0
        ? [{ point, before, fall: 1 - point.flow / before.flow }]
        : [];
    });
    const [worst] = falls.toSorted((one, other) => other.fall - one.fall);
    if (worst === undefined || !(worst.fall > allowed)) return [];
    const side = field === 'flowIntake' ? 'intake' : 'exhaust';
    return [
      find('V24', {
        input: `Flow sheet, ${side}`,
        kind: 'ratio',
        value: worst.fall,
        threshold: allowed,
        said: said`From ${figureOf(worst.before.lift, 'length')} to ${figureOf(worst.point.lift, 'length')} of lift the ${side} flow falls by ${percentFigure(worst.fall, 1)}; ${percentFigure(allowed)} is reading error. The port goes turbulent there, or a figure slipped.`,
      }),
    ];
  });
}

function effectiveness(sheet: CombinationSheet, { limit, find }: Speaker): Finding[] {
  const value = sheetNumber(sheet, 'cooler', 'effectiveness');
  const threshold = limit('V15.effectiveness');
  if (value === null || value <= threshold) return [];
  return [
    find('V15', {
      input: 'Effectiveness of the cooler',
      kind: 'ratio',
      value,
      threshold,
      said: said`The cooler's effectiveness is ${percentFigure(value)} on the sheet; above ${percentFigure(threshold)} none in a vehicle comes near. With ice it seems so when the inlet air is taken for what cools it.`,
    }),
  ];
}
