import { type PlanQuestion, type PullPlan, planPulls } from '@pullbook/core/plan';
import { percentFigure } from '@pullbook/core/quantity';
import { accepted, type Remark, type Result, refused, remark, said } from '@pullbook/core/remark';
import type { Trial } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import { gainFromText, oddsFromText } from './edge/plan-text.ts';
import { PACE, type PlanBasis, planBasis, USUAL_ODDS } from './plan-question.ts';
import { rememberedNow } from './remembered.ts';

/** What is to be planned, as text with units. */
export interface PlanAsked {
  /** `2 %` or `8 hp`; missing: as kept with the trial, else the smallest gain that matters to the shop. */
  gain?: string | undefined;
  /** `0.8` or `80 %`; missing: as kept, else 0.8. */
  odds?: string | undefined;
  /** How often the verdict is looked at, 1 to 3; missing: 2. */
  looks?: number | undefined;
  /** Most pulls still to make; missing: 16. */
  maximumPulls?: number | undefined;
}

const USUAL_LOOKS = 2;
/** A day on the brake: 10 to 40 pulls, warm-ups and tuning among them. Common practice, no source. */
const USUAL_MOST = 16;

/** A plan with what it rests on. */
export interface WorkedPlan {
  basis: PlanBasis;
  plan: PullPlan;
  gainRatio: number;
  odds: number;
}

/** Works a plan out of a trial's pulls and what is asked. */
export async function workedPlan(
  book: Book,
  trial: Trial,
  asked: PlanAsked,
  now: Date,
): Promise<Result<WorkedPlan>> {
  if (trial.kind === 'survey') {
    return refused(
      remark(
        'refusal',
        'no-baseline-to-plan',
        'A survey has no baseline, so there is no gain to plan for. Make it a comparison whose first combination is the baseline.',
      ),
    );
  }
  const basis = await planBasis(book, trial, now);
  const gain =
    asked.gain === undefined
      ? accepted(trial.plan?.gainRatio ?? basis.worthwhile)
      : gainFromText(asked.gain, basis.baselinePower);
  const odds = asked.odds === undefined ? accepted(trial.plan?.odds ?? USUAL_ODDS) : oddsFromText(asked.odds);
  const limits = limitsOf(asked);
  if (!gain.ok || !odds.ok || !limits.ok) {
    const [first, ...rest] = [gain, odds, limits].flatMap((one) => (one.ok ? [] : one.remarks));
    return refused(first!, ...rest);
  }
  const question: PlanQuestion = {
    ...limits.value,
    history: basis.history,
    combinations: basis.combinations,
    gainRatio: gain.value,
    odds: odds.value,
    made: basis.made,
    onTheBrake: basis.onTheBrake,
    pace: PACE,
  };
  // The page, its sheet and its keeping ask the same one after the other.
  const plan = rememberedNow(book, JSON.stringify(['plan', question]), () => planPulls(question));
  if (plan === null) {
    return refused(
      remark(
        'refusal',
        'too-few-pulls-to-plan',
        `No plan fits into ${limits.value.maximumPulls} pulls: ${trial.combinations.length} combinations need at least two counted pulls each. Allow more.`,
      ),
    );
  }
  return accepted({ basis, plan, gainRatio: gain.value, odds: odds.value });
}

function limitsOf({
  looks = USUAL_LOOKS,
  maximumPulls = USUAL_MOST,
}: PlanAsked): Result<{ looks: number; maximumPulls: number }> {
  if (![1, 2, 3].includes(looks)) {
    return refused(remark('refusal', 'looks', `${looks} looks cannot be planned. Give 1, 2 or 3.`));
  }
  if (!(Number.isInteger(maximumPulls) && maximumPulls >= 1 && maximumPulls <= 40)) {
    return refused(
      remark(
        'refusal',
        'most-pulls',
        `At most ${maximumPulls} pulls cannot be planned. Give a whole number from 1 to 40.`,
      ),
    );
  }
  return accepted({ looks, maximumPulls });
}

/** What has to be said beside a plan. */
export function planRemarks(plan: PullPlan, odds: number): Remark[] {
  if (plan.reaches) return [];
  const floor =
    plan.floor > 0
      ? said` What pulls of one set-up share cannot be averaged away: no number of them gets below ${percentFigure(plan.floor, 1)}. Only fitting the baseline once more does.`
      : said``;
  return [
    remark(
      'caution',
      'cannot-be-seen',
      said`This gain cannot be seen with ${percentFigure(odds)} odds: at best with ${percentFigure(plan.oddsReached)}, by the pulls given. With them the smallest difference is ${percentFigure(plan.smallestDifference, 1)}.${floor}`,
    ),
  ];
}
