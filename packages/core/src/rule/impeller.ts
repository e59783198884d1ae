import type { CombinationSheet } from '../combination/index.ts';
import { figureOf, MINUTE, percentFigure, speedFigure } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import type { Finding } from './model.ts';
import { sheetNumber } from './sheet-words.ts';
import type { Speaker } from './speaker.ts';

/** Turns of the impeller for one of the crankshaft without slip: crank over blower pulley, times step-up; `null`: not on the sheet. */
export function driveRatio(sheet: CombinationSheet | null): number | null {
  const crank = sheetNumber(sheet, 'drive', 'crankPulleyDiameter');
  const blower = sheetNumber(sheet, 'drive', 'blowerPulleyDiameter');
  const stepUp = sheetNumber(sheet, 'supercharger', 'stepUp');
  return crank === null || blower === null || stepUp === null || !(blower > 0)
    ? null
    : (crank / blower) * stepUp;
}

/** How fast an engine and its impeller turned or shall turn, r/min; `null`: not known. */
export interface TurningReach {
  engineSpeedRpm: number | null;
  /** As measured. */
  impellerRpm: number | null;
}

/** V20: the higher of measured impeller speed and that of the drive without slip, against the sheet's limit and tip speed. */
export function impellerFindings(
  sheet: CombinationSheet | null,
  { engineSpeedRpm, impellerRpm }: TurningReach,
  { limit, find }: Speaker,
): Finding[] {
  const ratio = driveRatio(sheet);
  const byDrive = ratio === null || engineSpeedRpm === null ? Number.NaN : engineSpeedRpm * ratio;
  const measured = impellerRpm ?? Number.NaN;
  const value = Math.max(...[byDrive, measured].filter(Number.isFinite));
  if (!Number.isFinite(value)) return [];
  return impellerBeside(
    {
      how: value === byDrive ? 'By the drive without slip' : 'As measured',
      value,
      allowed: sheetNumber(sheet, 'supercharger', 'maximumImpellerSpeed'),
      diameter: sheetNumber(sheet, 'supercharger', 'wheelExitDiameter'),
    },
    { limit, find },
  );
}

/** An impeller's speed beside what it stands. */
interface Impeller {
  /** Words that go before `the impeller reaches`. */
  how: string | Said;
  /** r/min */
  value: number;
  /** r/min; `null`: not known */
  allowed: number | null;
  /** m, of the wheel's exit; `null`: not known */
  diameter: number | null;
}

/** V20 of a speed however it was come by: against the limit, and of its tip. */
export function impellerBeside(
  { how, value, allowed, diameter }: Impeller,
  { limit, find }: Pick<Speaker, 'limit' | 'find'>,
): Finding[] {
  const input = 'Impeller speed';
  const findings: Finding[] = [];
  if (allowed !== null && value > limit('V20.near') * allowed) {
    const over = value > limit('V20.limit') * allowed;
    findings.push(
      find('V20', {
        input,
        kind: 'engineSpeed',
        value,
        threshold: allowed,
        level: over ? 'alarm' : 'caution',
        said: said`${how} the impeller reaches ${speedFigure(value)}, ${percentFigure(value / allowed)} of the ${speedFigure(allowed)} on the sheet. ${over ? 'A wheel that bursts goes through its housing: lower the engine speed or the ratio.' : 'Little is left for over-revving.'}`,
      }),
    );
  }
  const tip = diameter === null ? Number.NaN : (Math.PI * diameter * value) / MINUTE;
  if (tip > limit('V20.tip')) {
    const metresASecond = (speed: number) =>
      figureOf(speed, 'speed', { units: { us: 'ft/s', si: 'm/s' }, decimals: 0 });
    findings.push(
      find('V20', {
        input: 'Tip speed of the impeller',
        kind: 'speed',
        value: tip,
        threshold: limit('V20.tip'),
        level: 'caution',
        said: said`${how} the tip of the wheel moves at ${metresASecond(tip)}; ${metresASecond(limit('V20.tip'))} is about what aluminium wheels stand. Keep to the maker’s limit.`,
      }),
    );
  }
  return findings;
}
