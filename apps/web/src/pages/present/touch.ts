/** A finger that moves less than this taps, px. */
const TAP_PX = 12;
/** A finger that went further than this across swipes. */
const SWIPE_PX = 50;

export interface FingerWay {
  /** Where it came down and where it was lifted, px of the stage. */
  from: { x: number; y: number };
  to: { x: number; y: number };
  stageWidth: number;
}

/** What a finger meant that did not rest on the curves: a step, or a look at the place; `null`: nothing. */
export function meantBy({ from, to, stageWidth }: FingerWay): 'next' | 'back' | 'point' | null {
  const [across, down] = [to.x - from.x, to.y - from.y];
  if (Math.hypot(across, down) < TAP_PX) {
    if (to.x < stageWidth / 3) return 'back';
    return to.x > (2 * stageWidth) / 3 ? 'next' : 'point';
  }
  if (Math.abs(across) < SWIPE_PX || Math.abs(across) < Math.abs(down)) return null;
  return across < 0 ? 'next' : 'back';
}
