import type { ClipDescription, ClipStep, PictureBody } from './model.ts';
import { drawnRange } from './stack-motion.ts';

/** Where a clip is at a time. */
export interface ClipMoment {
  /** Index of the step. */
  step: number;
  /** Share of the cross-over from the step before that is done; 1: it is over. */
  crossed: number;
  /** How far the step has drawn itself: a share of its lines' way, or so many of its parts; `whole`: it stands. */
  drawn: number | 'whole';
}

/** A cross-over takes so long, s, but never more than this share of its step. */
const CROSSING = 0.4;
const MOST_CROSSING = 0.25;
/** A part of a table or list comes in over this time, s, or most of what it has until the next. */
const PART_COMING = 0.25;
const MOST_PART_COMING = 0.7;
/** Steps that moments are told apart by: finer than a pixel of the largest clip. */
const FINEST = 20_000;
const FINEST_FADE = 250;

const rounded = (share: number, steps: number): number => Math.round(share * steps) / steps;

/** How long a clip is, s. */
export const clipSeconds = ({ steps }: ClipDescription): number =>
  steps.reduce((sum, { seconds }) => sum + seconds, 0);

/** Things that come one after the other: rows, facts, badges, paragraphs. */
export function partsOf(body: PictureBody): number {
  if (body.kind === 'table' || body.kind === 'facts') return body.rows.length;
  if (body.kind === 'badges') return body.badges.length;
  return body.kind === 'words' ? body.paragraphs.length : 0;
}

/**
 * Where a clip is after so many seconds; before its begin it is there, after its end at its last picture. The same
 * clip and time give the same moment, and no frame depends on another.
 */
export function momentOf(clip: ClipDescription, atSeconds: number): ClipMoment {
  const last = clip.steps.findLastIndex(({ seconds }) => seconds > 0);
  if (last < 0) throw new Error('A clip without a step has no picture.');
  let begin = 0;
  for (const [index, step] of clip.steps.entries()) {
    if (index === last && atSeconds >= begin + step.seconds)
      return { step: index, crossed: 1, drawn: 'whole' };
    if (step.seconds > 0 && atSeconds < begin + step.seconds)
      return momentIn(step, index, Math.max(0, atSeconds - begin), begin === 0);
    begin += step.seconds;
  }
  return { step: last, crossed: 1, drawn: 'whole' };
}

function momentIn(step: ClipStep, index: number, at: number, isFirst: boolean): ClipMoment {
  const crossing = isFirst ? 0 : Math.min(CROSSING, MOST_CROSSING * step.seconds);
  const crossed = at < crossing ? rounded(at / crossing, FINEST_FADE) : 1;
  const drawing = step.drawingShare * (step.seconds - crossing);
  const share = drawing > 0 ? (at - crossing) / drawing : 1;
  const parts = partsOf(step.still.body);
  const isMoving = drawing > 0 && share < 1 && (parts > 0 || linesWay(step) !== null);
  if (!isMoving) return { step: index, crossed, drawn: 'whole' };
  if (parts === 0)
    return { step: index, crossed, drawn: crossed < 1 ? 0 : rounded(Math.max(0, share), FINEST) };
  return { step: index, crossed, drawn: partsCome(Math.max(0, share), parts, drawing) };
}

/** The way of a step's lines along their axis; `null`: none of them draws itself. */
export const linesWay = ({ still, drawn }: ClipStep): [low: number, high: number] | null =>
  still.body.kind === 'stack' ? drawnRange(still.body.chart, drawn) : null;

/** Each part comes in and then stands until the next. */
function partsCome(share: number, parts: number, drawingSeconds: number): number {
  const seconds = (share * parts - Math.floor(share * parts)) * (drawingSeconds / parts);
  const coming = Math.min(PART_COMING, (MOST_PART_COMING * drawingSeconds) / parts);
  return Math.floor(share * parts) + rounded(Math.min(1, seconds / coming), FINEST_FADE);
}

/** Names a frame: equal keys have equal frames, so that what stands is drawn once. */
export function clipFrameKey(clip: ClipDescription, atSeconds: number): string {
  const { step, crossed, drawn } = momentOf(clip, atSeconds);
  return `${step} ${crossed} ${drawn}`;
}
