import { STEP_IDS, type StepId } from '@pullbook/core/trial';
import type { TrialInView } from '../trial-in-view.ts';
import { baselineStep, boostStep, changedStep, gainStep } from './curve-steps.ts';
import { scaleOf } from './one-scale.ts';
import type { MadeStep, OwnStep } from './own-step.ts';
import { secondsToRead } from './seconds-to-read.ts';
import { askedStep, caveatStep, combinationStep, whyStep } from './word-steps.ts';

const NAMES: Record<StepId, string> = {
  asked: 'What is asked',
  combination: 'The combination',
  baseline: 'The baseline',
  changed: 'The change',
  gain: 'The gain',
  boost: 'Boost and temperatures',
  why: 'Why',
  caveat: 'The caveat',
};

/** Share of its time in which a curve draws itself; then it stands, to be read. */
const DRAWING_SHARE = 0.55;
/** The same for what comes line by line. What is asked is there at once: a clip's first frame is looked at longest. */
const COMING_SHARE = 0.3;

/** Every step of a trial as worked out, in the order in which they are told, all at the scale of its set. */
export function ownSteps(view: TrialInView): OwnStep[] {
  const scale = scaleOf(view);
  const made: Record<StepId, MadeStep> = {
    asked: askedStep(view),
    combination: combinationStep(view),
    baseline: baselineStep(view, scale),
    changed: changedStep(view, scale),
    gain: gainStep(view, scale),
    boost: boostStep(view, scale),
    why: whyStep(view),
    caveat: caveatStep(view),
  };
  const steps = STEP_IDS.map((id): OwnStep => {
    const { picture, whyNot, of = view, drawn = 'all' } = made[id];
    const drawingShare = id === 'asked' ? 0 : picture?.body.kind === 'stack' ? DRAWING_SHARE : COMING_SHARE;
    return { id, name: NAMES[id], picture, whyNot, of, drawn, drawingShare, seconds: 0 };
  });
  return secondsToRead(steps);
}
