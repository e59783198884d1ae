import type { CorrectionId } from '@pullbook/core/air';
import { type Baseline, baselineFromPulls } from '@pullbook/core/airpath';
import { type Combination, type CombinationSheet, isSupercharged } from '@pullbook/core/combination';
import { type ScaledBaseline, scaleBaseline } from '@pullbook/core/fit';
import { accepted, type Remark, type Result, refused } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import { chooseBaseline } from './choose-baseline.ts';
import { type EngineAtHand, pulledOf } from './engine-at-hand.ts';
import { viewedPulls } from './viewed-pulls.ts';

/** Any one serves: what a pair gained is nearly the same in all. */
const STANDARD: CorrectionId = 'sae-j1349';

/** What an engine does without its supercharger, with what had to be taken for it. */
export interface BaselineFound {
  baseline: Baseline;
  /** What it was scaled by, with its band; `null`: it is measured. */
  scaled: ScaledBaseline | null;
  /** Sheet of the pulls that it rests on. */
  behind: CombinationSheet;
  assumptions: Remark[];
}

/** The baseline of a supercharged combination from the pulls of its engine; refused with what to pull where there is none. */
export async function baselineFor(
  book: Book,
  combination: Combination,
  engine: EngineAtHand,
): Promise<Result<BaselineFound>> {
  const choice = chooseBaseline(combination, pulledOf(engine));
  if (choice.by === 'none') return refused(choice.reason);
  const viewed = (of: Combination, correction?: CorrectionId) =>
    viewedPulls(book, engine.pulls.get(of.id) ?? [], correction);
  const measured = baselineFromPulls(await viewed(choice.of), choice.of.sheet);
  if (!measured.ok || choice.by === 'measured')
    return measured.ok
      ? accepted({
          baseline: measured.value,
          scaled: null,
          behind: choice.of.sheet,
          assumptions: measured.remarks,
        })
      : measured;
  const { before, after } = choice;
  const scaled = scaleBaseline({
    of: measured.value,
    nearest: choice.of.name,
    pair: {
      // In a standard of correction, so that other weather on the other day is no gain.
      before: await viewed(before, STANDARD),
      after: await viewed(after, STANDARD),
      what: `"${after.name}" against "${before.name}"`,
      underBoost: isSupercharged(after.sheet),
    },
  });
  if (!scaled.ok) return scaled;
  const { baseline, remarks } = scaled.value;
  return accepted({
    baseline,
    scaled: scaled.value,
    behind: choice.of.sheet,
    assumptions: [...measured.remarks, ...remarks],
  });
}
