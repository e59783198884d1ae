import type { TrialAnswer } from '@pullbook/core/trial';
import type { ViewOptions } from '../model.ts';
import type { ShownRunningOrder } from './model.ts';
import { publishedView } from './published-view.ts';
import { toldSteps } from './told-steps.ts';

/** How a trial is told, for its editor: what was worked out, and what a person made of it. */
export function shownRunningOrder(answer: TrialAnswer, options: ViewOptions): ShownRunningOrder {
  const { steps, speed } = toldSteps(publishedView(answer, options));
  const whole = steps.reduce(
    (sum, { own, isShown, seconds }) => sum + (isShown && own.picture !== null ? seconds : 0),
    0,
  );
  return {
    steps: steps.map(({ own, isShown, title, seconds }) => ({
      id: own.id,
      name: own.name,
      isShown,
      whyNot: own.picture === null ? own.whyNot : '',
      title,
      ownTitle: own.picture?.headline ?? '',
      seconds,
      ownSeconds: own.seconds,
    })),
    speed,
    seconds: Number((whole / speed).toFixed(2)),
  };
}
