import { type Combination, isSupercharged } from '@pullbook/core/combination';
import type { ScaledBaseline } from '@pullbook/core/fit';
import { figureOf, speedFigure, withoutUnit } from '@pullbook/core/quantity';
import { type Remark, remark, said } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { baselineFor } from './baseline-for.ts';
import type { EngineAtHand } from './engine-at-hand.ts';

/** What stands in for pulls without supercharger that were never made, and the sentence that says so. */
export interface ScaledAlone {
  reason: Remark;
  scaled: ScaledBaseline;
}

/**
 * The curve of a combination without supercharger that nobody pulled: the nearest measured one, scaled. `null` where it has pulls of
 * its own, where it is supercharged, or where nothing can be scaled.
 */
export async function scaledAlone(
  book: Book,
  combination: Combination,
  engine: EngineAtHand,
): Promise<ScaledAlone | null> {
  if (isSupercharged(combination.sheet) || engine.pulls.has(combination.id)) return null;
  const found = await baselineFor(book, combination, engine);
  if (!found.ok || found.value.scaled === null) return null;
  const { scaled } = found.value;
  return { scaled, reason: remark('note', 'scaled-alone', highestSaid(scaled)) };
}

function highestSaid({ baseline: { brakePower, engineSpeedRpm }, power, basis }: ScaledBaseline) {
  const top = brakePower.indexOf(Math.max(...brakePower));
  const [low, middle, high] = [power.low, brakePower, power.high].map((one) =>
    figureOf(one[top]!, 'power', { decimals: 0 }),
  );
  return said`It has no supercharger, so there is nothing to match, and it was never pulled. ${basis} That is ${middle!} (${withoutUnit(low!)} to ${withoutUnit(high!)}) at its highest, at ${speedFigure(engineSpeedRpm[top]!)}, as observed in the air of the pulls it is scaled from.`;
}
