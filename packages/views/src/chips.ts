import type { Verdict } from '@pullbook/core/compare';
import { unlikeConditions } from '@pullbook/core/trial';
import { audienceChips } from './audience.ts';
import type { Chip } from './model.ts';
import type { Showing } from './showing.ts';
import { isInvented, type TrialInView } from './trial-in-view.ts';
import { verdictWords } from './verdict-line.ts';
import { counted, inSentence } from './wording.ts';

/** The trial's state in a few words each; the verdict's chip stands in its own line. */
export function trialChips(view: TrialInView): Chip[] {
  return [
    ...stateChips(view),
    ...conditionChips(view),
    ...audienceChips(view.trial.audience),
    ...inventedChips(isInvented(view)),
  ];
}

/** The chips of a card: the verdict, what is missing or invented, and no more. */
export function cardChips(view: TrialInView): Chip[] {
  return [
    ...verdictChips(view),
    ...stateChips(view),
    ...audienceChips(view.trial.audience),
    ...inventedChips(isInvented(view)),
  ];
}

/** One for each gain; with the combination's key where there are several. */
function verdictChips({ gains, show }: TrialInView): Chip[] {
  return gains.flatMap(({ gain: { verdict }, changed }): Chip[] => {
    if (verdict === null) return [];
    const chip = verdictChip(show, verdict);
    return [gains.length > 1 ? { ...chip, text: `${changed.key}: ${inSentence(chip.text)}` } : chip];
  });
}

/** A verdict as a chip: its word with its shape. */
export const verdictChip = (show: Showing, verdict: Verdict): Chip => ({
  text: verdictWords(show, verdict),
  tone: 'quiet',
  verdict: verdict.word,
});

export function inventedChips(invented: boolean): Chip[] {
  return invented ? [{ text: 'Invented data', tone: 'quiet' }] : [];
}

const STATES: Partial<Record<TrialInView['state'], string>> = {
  'no pulls': 'No pulls yet',
  'no baseline': 'No baseline',
  'one combination': 'Only one combination pulled',
  'no common window': 'No common engine speed',
};

function stateChips(view: TrialInView): Chip[] {
  const state = STATES[view.state];
  const chips: Chip[] = state ? [{ text: state, tone: 'caution' }] : [];
  if (view.state === 'answered') {
    chips.push(...view.missing.map(({ key }): Chip => ({ text: `${key} not pulled`, tone: 'caution' })));
  }
  if (view.state === 'survey') chips.push({ text: 'Survey: no gain claimed', tone: 'quiet' });
  if (view.comparison && !view.comparison.correction.reached) {
    chips.push({
      text: view.comparison.correction.standard === 'observed' ? 'As observed' : 'As recorded',
      tone: 'caution',
    });
  }
  return chips;
}

/** Beside the change itself; how the parts and the days lie is told by the badges. */
function conditionChips(view: TrialInView): Chip[] {
  if (view.comparison === null || view.gains.length === 0) return [];
  const differing = unlikeConditions(view.comparison).length;
  if (differing === 0) return [];
  return [
    { text: `${counted(differing, 'condition')} ${differing === 1 ? 'differs' : 'differ'}`, tone: 'caution' },
  ];
}
