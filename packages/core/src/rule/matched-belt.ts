import { driveFigures } from '../airpath/index.ts';
import { figureOf, percentFigure, speedFigure } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import type { MatchAtHand } from './match-at-hand.ts';
import type { Finding } from './model.ts';

/** V41: what a ribbed belt has to pull at its hardest, against what its ribs and wrap are known to hold. */
export function matchedBelt(at: MatchAtHand): Finding[] {
  const { drive } = at.input;
  const hardest = at.highest((node) => at.figure('drivePower', node));
  if (drive.kind !== 'ribbed belt' || hardest === null) return [];
  const engineSpeedRpm = at.curve.engineSpeedRpm[hardest.node]!;
  const figures = driveFigures(drive, { engineSpeedRpm, drivePower: hardest.value, wheelExitDiameter: null });
  const { gripUsed, belt, crankTorque } = figures;
  const most = belt?.most ?? null;
  const value = gripUsed ?? (most === null ? null : hardest.value / most);
  if (value === null || !(value > at.limit('V41.near'))) return [];
  const over = value > at.limit('V41.full');
  const needed = belt?.ribsNeeded ?? null;
  return [
    at.find('V41', {
      input: gripUsed === null ? 'Drive power and belt' : 'Belt pull, ribs and wrap',
      kind: 'ratio',
      value,
      threshold: at.limit(over ? 'V41.full' : 'V41.near'),
      level: over ? 'caution' : 'note',
      said: said`At ${speedFigure(engineSpeedRpm)} the drive takes ${figureOf(hardest.value, 'power')}, ${figureOf(crankTorque, 'torque')} at the crankshaft: ${percentFigure(value)} of what ${drive.ribs ?? 'its'} ribs are known to hold${wrapped(drive.wrapAngle)}. ${over ? 'Slip is to be expected' : 'Little is left'}: ${remedy(needed, drive.ribs)}.`,
    }),
  ];
}

const wrapped = (wrap: number | null): Said =>
  wrap === null ? said`` : said` at ${figureOf(wrap, 'angle', { decimals: 0 })} of wrap`;

function remedy(needed: number | null, ribs: number | null): string {
  const more = 'a bigger crank pulley at the same ratio, or more wrap, lowers it';
  if (needed === null) return `beyond ribbed belts, think of teeth; ${more}`;
  return ribs !== null && needed > ribs ? `${needed} ribs are the class for that power; ${more}` : more;
}
