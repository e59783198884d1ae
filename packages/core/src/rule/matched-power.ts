import { median } from '../numeric/index.ts';
import { figureOf, numberFigure, percentFigure, speedFigure } from '../quantity/index.ts';
import { said } from '../remark/index.ts';
import { LEAST_BOOST_PA } from './boost-index.ts';
import type { MatchAtHand } from './match-at-hand.ts';
import type { Finding } from './model.ts';

/** V43: what the drive takes of brake power. V16: the boost index of the match. */
export const matchedPower = (at: MatchAtHand): Finding[] => [...driveShare(at), ...index(at)];

function driveShare(at: MatchAtHand): Finding[] {
  const most = at.highest((node) => {
    const [taken, left] = [at.figure('drivePower', node), at.figure('brakePower', node)];
    return left > 0 ? taken / left : Number.NaN;
  });
  const threshold = at.limit('V43.share');
  if (most === null || most.value <= threshold) return [];
  return [
    at.find('V43', {
      input: 'Power of the drive and at the brake',
      kind: 'ratio',
      value: most.value,
      threshold,
      said: said`By the match the drive takes ${figureOf(at.figure('drivePower', most.node), 'power')} at ${speedFigure(at.curve.engineSpeedRpm[most.node]!)}, ${percentFigure(most.value, 1)} of brake power; up to ${percentFigure(threshold)} is usual of a centrifugal. The compressor is far off its best, or the boost is high for the engine.`,
    }),
  ];
}

function index(at: MatchAtHand): Finding[] {
  const value = median(
    at.curve.engineSpeedRpm
      .map((_, node) =>
        at.figure('boost', node) > LEAST_BOOST_PA ? at.figure('boostIndex', node) : Number.NaN,
      )
      .filter(Number.isFinite),
  );
  const [low, high] = [at.limit('V16.low'), at.limit('V16.high')];
  if (!Number.isFinite(value) || (value >= low && value <= high)) return [];
  return [
    at.find('V16', {
      input: 'Power and boost of the match against its baseline',
      kind: 'ratio',
      value,
      threshold: value < low ? low : high,
      said: said`The match makes ${numberFigure(value, 2)} of what its pressure ratio would give on the baseline; ${numberFigure(low, 2)} to ${numberFigure(high, 2)} is plausible. ${value < low ? 'Heat, a drive that takes much, spark taken back: look where the power goes.' : 'Look at the baseline and at what was taken for efficiency and cooler: it promises too much.'}`,
    }),
  ];
}
