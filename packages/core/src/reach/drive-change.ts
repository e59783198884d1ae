import { sheetNumber } from '../combination/index.ts';
import { figureOf, numberFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { ENTERED, edit } from './entered.ts';
import { groundOfBuild } from './ground.ts';
import type { CostClass, ReachBuild, ReachChange, ReachInput } from './model.ts';
import type { DriveChoice } from './picked.ts';

/** A size that a drive may have, with the turns of the impeller for one of the engine that come of it. */
export interface DriveSize extends DriveChoice {
  ratio: number;
  cost: CostClass;
}

const FIELDS = {
  blowerPulley: { section: 'drive', field: 'blowerPulleyDiameter' },
  crankPulley: { section: 'drive', field: 'crankPulleyDiameter' },
  stepUp: { section: 'supercharger', field: 'stepUp' },
} as const;

/** Sizes nearer to one another than this are the same. */
const SAME = 1e-6;

/**
 * What can be had of one part of a build's drive, the slowest first and without the size that is there: pulleys where the ratio goes by their
 * diameters, not by teeth and not as stated. A rung changes one of blower pulley, crank pulley and step-up: their ratio is all that
 * the impeller sees.
 */
export function driveSizes(input: ReachInput, build: ReachBuild, by: DriveChoice['by']): DriveSize[] {
  const present = presentSize(build, by);
  if (present === null || build.match === null) return [];
  const { pulleyRatio, stepUp } = build.match.input.drive;
  const overall = pulleyRatio * stepUp;
  const listed: { size: number; cost: CostClass }[] = {
    blowerPulley: input.blowerPulleys.map(({ diameter, cost }) => ({ size: diameter, cost })),
    crankPulley: input.crankPulleys.map(({ diameter, cost }) => ({ size: diameter, cost })),
    stepUp: input.stepUps.map(({ ratio, cost }) => ({ size: ratio, cost })),
  }[by];
  return listed
    .filter(({ size }) => size > 0 && Math.abs(size / present - 1) > SAME)
    .map(({ size, cost }) => ({
      by,
      size,
      cost,
      ratio: overall * (by === 'blowerPulley' ? present / size : size / present),
    }))
    .sort((a, b) => a.ratio - b.ratio || a.size - b.size);
}

/** m, or the step-up; `null`: another size of it would change nothing that the match goes by. */
function presentSize({ sheet, madeOf }: ReachBuild, by: DriveChoice['by']): number | null {
  const stated = madeOf?.stated;
  if (by === 'stepUp')
    return stated?.stepUp === undefined ? sheetNumber(sheet, 'supercharger', 'stepUp') : null;
  if (!goesByDiameters({ sheet, madeOf })) return null;
  return sheetNumber(sheet, 'drive', FIELDS[by].field);
}

/** Whether the ratio of a build comes of two diameters. */
export function goesByDiameters({ sheet, madeOf }: Pick<ReachBuild, 'sheet' | 'madeOf'>): boolean {
  const has = (field: string): boolean => sheetNumber(sheet, 'drive', field) !== null;
  return (
    madeOf?.stated?.pulleyRatio === undefined &&
    has('crankPulleyDiameter') &&
    has('blowerPulleyDiameter') &&
    !(has('crankPulleyTeeth') && has('blowerPulleyTeeth')) &&
    !/direct/u.test(sheet.sections.drive?.type?.text.toLowerCase() ?? '')
  );
}

/** Whole millimetres, but for the computer's rounding. */
const isWhole = (metres: number): boolean => Math.abs(1000 * metres - Math.round(1000 * metres)) < SAME;

/** Another pulley or step-up, in place of the one on the build's sheet. */
export function driveChange(build: ReachBuild, { by, size }: DriveChoice, cost: CostClass): ReachChange {
  const { section, field } = FIELDS[by];
  const before = sheetNumber(build.sheet, section, field)!;
  const figure = (value: number) =>
    by === 'stepUp'
      ? numberFigure(value, 2)
      : figureOf(value, 'length', { decimals: isWhole(value) ? 0 : 1, units: { us: 'mm', si: 'mm' } });
  const words: Record<DriveChoice['by'], string> = {
    blowerPulley: 'Blower pulley',
    crankPulley: 'Crank pulley',
    stepUp: 'Step-up',
  };
  return {
    part: by === 'stepUp' ? 'stepUp' : 'pulley',
    said: said`${words[by]} ${figure(size)} in place of ${figure(before)}`,
    edits: [edit(section, field, by === 'stepUp' ? ENTERED.number(size) : ENTERED.length(size))],
    clears: [],
    cost,
    ...groundOfBuild(build),
  };
}
