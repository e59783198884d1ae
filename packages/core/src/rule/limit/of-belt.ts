import type { MatchCurve, MatchInput } from '../../airpath/index.ts';
import { driveFigures } from '../../airpath/index.ts';
import { figureOf, percentFigure, speedFigure } from '../../quantity/index.ts';
import { said } from '../../remark/index.ts';
import { highestOf } from './engine-at-limits.ts';
import { below, isPassed, type LimitKind } from './limit-kind.ts';
import { onSheet } from './on-sheet.ts';

/** V41: what a ribbed belt has to pull at its hardest against what its ribs hold at this wrap, or its class serves. */
export const beltLimit: LimitKind = {
  label: 'Belt',
  ruleId: 'V41',
  bindsUsually: true,
  measure: (at) => {
    const used = at.input === null ? null : beltUsed(at.input, at.curve!);
    if (used === null) return null;
    const from = 'V41.full';
    return below({ value: used.value, threshold: at.limit(from), kind: 'ratio', rpm: used.rpm, from });
  },
  tell: (measured, at) => {
    const used = beltUsed(at.input!, at.curve!)!;
    return said`At ${speedFigure(used.rpm)} the drive takes ${figureOf(used.drivePower, 'power')}: ${percentFigure(measured.value)} of what ${at.input!.drive.ribs!} ribs are known to hold; ${percentFigure(measured.threshold)} is the limit.${isPassed(measured) ? ' It slips, and heats: more ribs, more wrap, or a larger crank pulley at the same ratio. Nobody in line with the belt.' : ''}`;
  },
  levelPassed: () => 'caution',
  missing: (at) =>
    at.input?.drive.kind === 'ribbed belt'
      ? `Belt: its ribs are not on the sheet (${onSheet('drive', 'beltRibs')}), or fewer than six, of which nothing usual is told.`
      : null,
};

/** Share of what a ribbed belt holds that it needs at its hardest, with the engine speed of that. */
export interface BeltUsed {
  value: number;
  rpm: number;
  /** W at the crankshaft */
  drivePower: number;
  /** Whether wrap and crank pulley are known; else it is by the class of its ribs. */
  isByGrip: boolean;
}

/** What a match asks of its ribbed belt; `null`: another drive, or its ribs are not known. */
export function beltUsed({ drive }: Pick<MatchInput, 'drive'>, curve: MatchCurve): BeltUsed | null {
  const hardest = drive.kind === 'ribbed belt' ? highestOf(curve, 'drivePower') : null;
  if (hardest === null) return null;
  const [drivePower, rpm] = [hardest.value, hardest.rpm!];
  const { gripUsed, belt } = driveFigures(drive, {
    engineSpeedRpm: rpm,
    drivePower,
    wheelExitDiameter: null,
  });
  const most = belt?.most ?? null;
  const value = gripUsed ?? (most === null ? null : drivePower / most);
  return value === null ? null : { value, rpm, drivePower, isByGrip: gripUsed !== null };
}
