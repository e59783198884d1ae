import type { ClipDescription } from '@pullbook/charts';

/** Second at which a step begins. */
export const startOfStep = ({ steps }: ClipDescription, place: number): number =>
  steps.slice(0, place).reduce((sum, { seconds }) => sum + seconds, 0);

/** Which step is there at this second; the last one at the end. */
export function stepAt(clip: ClipDescription, atSeconds: number): number {
  const next = clip.steps.findIndex((_, place) => startOfStep(clip, place) > atSeconds);
  return next < 0 ? Math.max(0, clip.steps.length - 1) : Math.max(0, next - 1);
}
