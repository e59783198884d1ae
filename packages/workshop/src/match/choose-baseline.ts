import { type Combination, isSupercharged, type PartChange } from '@pullbook/core/combination';
import { type Remark, remark } from '@pullbook/core/remark';
import { engineDifferences, isSameChange, superchargerDifferences } from './engine-alone.ts';

/** What tells how the engine runs without its supercharger. */
export type BaselineChoice =
  /** Naturally aspirated pulls of an engine that is the same but for the supercharger. */
  | { by: 'measured'; of: Combination }
  /** The nearest such pulls, scaled by what the same change did in a measured pair. */
  | { by: 'scaled'; of: Combination; before: Combination; after: Combination; change: PartChange[] }
  | { by: 'none'; reason: Remark };

/**
 * The best there is for a supercharged combination, among the combinations of its engine that were pulled: like for like, else
 * scaled, else why there is none and what to pull.
 */
export function chooseBaseline({ name, sheet }: Combination, pulled: readonly Combination[]): BaselineChoice {
  const alone = pulled
    .filter((one) => !isSupercharged(one.sheet))
    .map((of) => ({ of, change: engineDifferences(of.sheet, sheet) }))
    .sort((a, b) => a.change.length - b.change.length);
  const [nearest] = alone;
  if (nearest === undefined) return { by: 'none', reason: nothingPulled(name) };
  if (nearest.change.length === 0) return { by: 'measured', of: nearest.of };
  for (const { of, change } of alone) {
    const pair = measuredPair(change, pulled, of);
    if (pair !== null) return { by: 'scaled', of, change, ...pair };
  }
  return { by: 'none', reason: nothingAlike(name, nearest.of.name, nearest.change) };
}

/** Two pulled combinations that differ by this change and by nothing of the supercharger; the pair nearest to what is scaled. */
export function measuredPair(
  change: readonly PartChange[],
  pulled: readonly Combination[],
  of: Combination,
): { before: Combination; after: Combination } | null {
  const pairs = pulled.flatMap((before) =>
    pulled
      .filter(
        (after) =>
          after !== before &&
          superchargerDifferences(before.sheet, after.sheet).length === 0 &&
          isSameChange(engineDifferences(before.sheet, after.sheet), change),
      )
      .map((after) => ({ before, after, far: engineDifferences(of.sheet, before.sheet).length })),
  );
  const [nearest] = pairs.sort((a, b) => a.far - b.far);
  return nearest === undefined ? null : { before: nearest.before, after: nearest.after };
}

const nothingPulled = (name: string): Remark =>
  remark(
    'refusal',
    'no-baseline',
    `${name}: nothing says what this engine does without the supercharger. Make one naturally aspirated pull of it with the same heads, cam, intake and exhaust, and add it under a combination without a supercharger; or give a curve in a match file ("pullbook match FILE.yaml").`,
  );

function nothingAlike(name: string, nearest: string, change: readonly PartChange[]): Remark {
  const lines = change.map(
    ({ label, before, after }) => `${label} (${before ?? 'not told'} / ${after ?? 'not told'})`,
  );
  const shown = lines.slice(0, 4).join('; ') + (lines.length > 4 ? `; and ${lines.length - 4} more` : '');
  return remark(
    'refusal',
    'no-baseline-alike',
    `${name}: the nearest naturally aspirated pulls are of "${nearest}", which differs in ${shown}. Pull this engine once without the supercharger as it is now, or pull that change on its own (before and after it, with or without boost): the nearest pull is then scaled by it.`,
  );
}
