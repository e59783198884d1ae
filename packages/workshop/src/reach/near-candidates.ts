import type { CorrectionId } from '@pullbook/core/air';
import { commonSpeeds, readAt, type ViewedPull } from '@pullbook/core/airpath';
import { mean } from '@pullbook/core/numeric';
import type { NearCandidate, ReachTarget } from '@pullbook/core/reach';
import type { Book } from '@pullbook/store';
import { pullsThatCount } from '../match/pulls-that-count.ts';
import { viewedPulls } from '../match/viewed-pulls.ts';

/** So many on each side of the target. */
const EACH_SIDE = 3;

/**
 * The pulled combinations of the book nearest to a target, three above and three below, by the mean of what their counted pulls make of the
 * very figure that is asked for. A pull that cannot be carried to the standard is no neighbour.
 */
export async function nearCandidates(
  book: Book,
  target: ReachTarget,
  { engineId, correction }: { engineId: string; correction: CorrectionId },
): Promise<NearCandidate[]> {
  const names = await book.combinationNames();
  const counted = await pullsThatCount(
    book,
    names.map(({ id }) => id),
    null,
  );
  const found: NearCandidate[] = [];
  for (const [combinationId, heads] of counted) {
    const pulls = (await viewedPulls(book, heads, correction)).filter(({ view }) => view.correction.reached);
    const power = figureOfPulls(pulls, target);
    const combination = power === null ? null : await book.combination(combinationId);
    if (power === null || combination === null) continue;
    found.push({
      combinationId,
      name: combination.name,
      pullIds: pulls.map(({ pull }) => pull.id),
      power,
      isSameEngine: combination.engineId === engineId,
      side: power < target.power ? 'below' : 'above',
      sheet: combination.sheet,
    });
  }
  const nearest = found.sort((a, b) => Math.abs(a.power - target.power) - Math.abs(b.power - target.power));
  const side = (wanted: NearCandidate['side']) =>
    nearest.filter((one) => one.side === wanted).slice(0, EACH_SIDE);
  return [...side('above'), ...side('below')].sort((a, b) => b.power - a.power);
}

/** Mean over pulls of what the target asks for, W; `null`: none of them covers it. */
export function figureOfPulls(
  pulls: readonly ViewedPull[],
  target: Pick<ReachTarget, 'what' | 'atRpm' | 'windowRpm'>,
): number | null {
  const figures = pulls.map((one) => figureOfPull(one, target)).filter((value) => Number.isFinite(value));
  return figures.length === 0 ? null : mean(figures);
}

/** r/min between the speeds at which an average is read. */
const STEP_RPM = 50;

function figureOfPull(
  one: ViewedPull,
  { what, atRpm, windowRpm }: Pick<ReachTarget, 'what' | 'atRpm' | 'windowRpm'>,
): number {
  if (what === 'power at a speed') return readAt(one.view, 'power', [atRpm!])[0]!;
  if (what === 'average power') {
    const [low, high] = windowRpm!;
    const count = Math.max(2, Math.round((high - low) / STEP_RPM) + 1);
    const speeds = Array.from({ length: count }, (_, at) => low + ((high - low) * at) / (count - 1));
    return mean(readAt(one.view, 'power', speeds));
  }
  const speeds = commonSpeeds([one]);
  return speeds.length === 0 ? Number.NaN : Math.max(...readAt(one.view, 'power', speeds));
}
