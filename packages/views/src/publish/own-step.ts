import type { ClipStep } from '@pullbook/charts';
import type { StepId } from '@pullbook/core/trial';
import type { TrialInView } from '../trial-in-view.ts';
import type { Picture } from './picture.ts';

/** A step as it is worked out, before anybody changed anything of it. */
export interface OwnStep {
  id: StepId;
  name: string;
  /** `null`: the trial has nothing for it; `whyNot` says why. */
  picture: Picture | null;
  whyNot: string;
  /** What it is about: its footer, and the exact numbers beside its curves. */
  of: TrialInView;
  drawn: ClipStep['drawn'];
  drawingShare: number;
  seconds: number;
}

/** What is made of a step; missing: it is about the whole trial, and all of it draws itself. */
export type MadeStep = Pick<OwnStep, 'picture' | 'whyNot'> & Partial<Pick<OwnStep, 'of' | 'drawn'>>;
