import { readFile } from 'node:fs/promises';
import type { LineToChange, PartChange } from '@pullbook/core/combination';
import type { Command } from 'commander';
import { parted, textsValue } from './option-values.ts';

/** Lines of a sheet changed on the command line. */
export interface LineOptions {
  set?: string[];
  drop?: string[];
  flowIntake?: string;
  flowExhaust?: string;
  liftIntake?: string;
  liftExhaust?: string;
}

/** Files of points by the table they go into. */
const POINT_FILES = {
  flowIntake: 'heads.flowIntake.points',
  flowExhaust: 'heads.flowExhaust.points',
  liftIntake: 'cam.liftCurveIntake.points',
  liftExhaust: 'cam.liftCurveExhaust.points',
} as const;

/** Adds the options that change lines of a sheet. */
export function withLineOptions(command: Command): Command {
  return command
    .option(
      '--set <line=value>',
      'change one line: "cam.durationIntake=284 deg (data sheet)" (repeat)',
      textsValue,
    )
    .option('--drop <line>', 'take one line off: cam.advance (repeat)', textsValue)
    .option(
      '--flow-intake <file>',
      'points of the flow sheet, intake: CSV with lift and flow and their units',
    )
    .option('--flow-exhaust <file>', 'the same of the exhaust')
    .option(
      '--lift-intake <file>',
      'points of the lift curve, intake: CSV with angle and lift and their units',
    )
    .option('--lift-exhaust <file>', 'the same of the exhaust');
}

/** What is dropped first, then the files, then what is set, so that each can be put upon the other. */
export async function linesFrom(options: LineOptions): Promise<LineToChange[]> {
  const names = Object.keys(POINT_FILES) as (keyof typeof POINT_FILES)[];
  const files = await Promise.all(
    names.map(async (name) => {
      const file = options[name];
      return file === undefined ? [] : [{ place: POINT_FILES[name], entered: await readFile(file, 'utf8') }];
    }),
  );
  return [
    ...(options.drop ?? []).map((place) => ({ place, entered: null })),
    ...files.flat(),
    ...(options.set ?? []).map((text) => {
      const [place, entered] = parted(text);
      return { place, entered };
    }),
  ];
}

/** How changed lines read: `Cam, profile: base → longer`. */
export function changeLines(changes: readonly PartChange[]): string[] {
  if (changes.length === 0) return ['Nothing on the sheet differs from the one it is made from.'];
  return changes.map(
    ({ label, before, after }) =>
      `  ${label}: ${before ?? 'not on the sheet'} → ${after ?? 'not on the sheet'}`,
  );
}
