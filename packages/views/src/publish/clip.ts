import type { ClipDescription, ClipStep } from '@pullbook/charts';
import type { TrialAnswer } from '@pullbook/core/trial';
import { cursorTable } from '../cursor-table.ts';
import type { CursorTable, ViewOptions } from '../model.ts';
import { framed, type Signature } from './picture.ts';
import { publishedView } from './published-view.ts';
import { type ToldStep, toldSteps } from './told-steps.ts';

/** A step to stand beside: its picture finished, and the exact numbers under the pointer where it has curves. */
export type PresentedStep = ClipStep & { cursor: CursorTable | null };

/**
 * A trial told step by step, in the order and at the speed that its running order asks for; steps that it has nothing for fall
 * out. All curves stand at the scale of the trial's set of stills.
 */
export function clipDescription(
  answer: TrialAnswer,
  options: ViewOptions,
  signature: Signature,
): ClipDescription {
  return { steps: presentation(answer, options, signature).steps.map(({ cursor: _, ...step }) => step) };
}

/** The clip's steps for a presentation: at their ends, with the exact numbers of what each step shows. */
export function presentation(
  answer: TrialAnswer,
  options: ViewOptions,
  signature: Signature,
): { steps: PresentedStep[] } {
  const { steps, speed } = toldSteps(publishedView(answer, options));
  return {
    steps: steps.flatMap((told) => {
      const step = told.isShown ? clipStep(told, speed, signature) : null;
      return step === null ? [] : [{ ...step, cursor: numbersOf(told) }];
    }),
  };
}

function clipStep({ own, title, seconds }: ToldStep, speed: number, signature: Signature): ClipStep | null {
  if (own.picture === null) return null;
  return {
    id: own.id,
    still: framed(own.of, signature, { ...own.picture, headline: title }),
    seconds: seconds / speed,
    drawingShare: own.drawingShare,
    drawn: own.drawn,
  };
}

/** The figures of the panels that the step shows, and no others; gains with their bands where the gain is shown. */
function numbersOf({ own: { picture, of } }: ToldStep): CursorTable | null {
  const table = picture?.body.kind === 'stack' ? cursorTable(of) : null;
  if (table === null || picture?.body.kind !== 'stack') return null;
  const { gains, ...exact } = table;
  const shown = new Set(picture.body.chart.panels.map(({ id }) => id));
  const rows = table.rows.filter(({ id }) => shown.has(id));
  return { ...exact, rows, ...(gains !== undefined && shown.has('gain') ? { gains } : {}) };
}
