import { beltClassFor } from '../airpath/index.ts';
import { figureOf, percentFigure, speedFigure, torqueFromPower } from '../quantity/index.ts';
import { type Said, said } from '../remark/index.ts';
import { beltUsed } from './limit/of-belt.ts';
import type { MatchAtHand } from './match-at-hand.ts';
import type { Finding } from './model.ts';

/** V41: what a ribbed belt has to pull at its hardest, against what its ribs and wrap are known to hold. */
export function matchedBelt(at: MatchAtHand): Finding[] {
  const { drive } = at.input;
  const used = beltUsed(at.input, at.curve);
  if (used === null || !(used.value > at.limit('V41.near'))) return [];
  const { value, rpm, drivePower, isByGrip } = used;
  const over = value > at.limit('V41.full');
  const needed = beltClassFor(drivePower, drive.ribs).ribsNeeded;
  return [
    at.find('V41', {
      input: isByGrip ? 'Belt pull, ribs and wrap' : 'Drive power and belt',
      kind: 'ratio',
      value,
      threshold: at.limit(over ? 'V41.full' : 'V41.near'),
      level: over ? 'caution' : 'note',
      said: said`At ${speedFigure(rpm)} the drive takes ${figureOf(drivePower, 'power')}, ${figureOf(torqueFromPower(drivePower, rpm), 'torque')} at the crankshaft: ${percentFigure(value)} of what ${drive.ribs ?? 'its'} ribs are known to hold${wrapped(drive.wrapAngle)}. ${over ? 'Slip is to be expected' : 'Little is left'}: ${remedy(needed, drive.ribs)}.`,
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
