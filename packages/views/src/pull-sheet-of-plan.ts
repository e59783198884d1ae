import { isSupercharged } from '@pullbook/core/combination';
import { beforeThePull, cautionsOf, PLANNING_AID } from '@pullbook/core/plan';
import type { ViewOptions } from './model.ts';
import { type PlanPageInput, planSentence, startLines, stopLines } from './plan-page.ts';
import type { PullSheet } from './pull-sheet.ts';
import { showingIn } from './showing.ts';
import { correctionName } from './standard-name.ts';
import { listed } from './wording.ts';

/** The sheet of the pulls of a plan that are still to make. `pulls`: each with its number in the plan. */
export function pullSheet(
  input: PlanPageInput,
  pulls: readonly { order: number; key: string }[],
  options: ViewOptions,
): PullSheet {
  const { trial, plan, combinations, engine, windowRpm, sweepRateRpmPerS } = input;
  const show = showingIn(options);
  const combinationOf = (key: string) => combinations.find((one) => one.key === key)!;
  const window = windowRpm === null ? '' : show.speedRange(windowRpm);
  return {
    question: trial.question,
    combinations: listed(
      combinations.map(({ key, name }) => `${key} ${name}`),
      'against',
    ),
    sentence: planSentence(input, options),
    facts: [
      { label: 'Standard', value: correctionName(trial.correction) },
      { label: 'Window', value: window || 'what all pulls cover' },
      { label: 'Look', value: `after ${listed(plan.looksAt.map((at) => `${at}`))} counted pulls` },
    ],
    notes: trial.plan?.notes ?? '',
    rows: pulls.map(({ order, key }, place) => {
      const { name, sheet, takenApart } = combinationOf(key);
      const before = pulls[place - 1]?.key;
      const isApart =
        before !== undefined && before !== key && (takenApart || combinationOf(before).takenApart);
      const advice = beforeThePull(sheet !== null && isSupercharged(sheet), place === 0);
      return {
        order,
        key,
        name,
        fitting:
          before === undefined || isApart
            ? {
                words: `${isApart ? 'Take the engine apart, fit ' : 'Fitted: '}${key} ${name}${advice.warmUps > 0 ? '. Warm-ups, never counted:' : ''}`,
                warmUps: advice.warmUps,
              }
            : null,
        wait: advice.waitMinutes === null ? '' : `${advice.waitMinutes} min`,
      };
    }),
    window: window.replace(/\s*rpm$/u, ''),
    rate: sweepRateRpmPerS === null ? '' : show.quantity(sweepRateRpmPerS, 'sweepRate'),
    withCharge: engine.isBoosted,
    start: startLines(engine, options),
    stopCriteria: stopLines(trial, engine, options),
    planningAid: PLANNING_AID,
    cautions: cautionsOf(engine),
    isInvented: trial.invented,
  };
}
