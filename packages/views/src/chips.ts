import { thingsChanged } from '@pullbook/core/trial';
import { audienceChips } from './audience.ts';
import type { Chip } from './model.ts';
import { countedPulls, isInvented, type TrialInView } from './trial-in-view.ts';
import { counted, inSentence } from './wording.ts';

/** The trial's state in a few words each. A verdict's chip will stand first once there are verdicts. */
export function trialChips(view: TrialInView): Chip[] {
  return [
    ...stateChips(view),
    ...changeChips(view),
    ...dayChips(view),
    ...conditionChips(view),
    ...audienceChips(view.trial.audience),
    ...inventedChips(isInvented(view)),
  ];
}

/** The chips of a card: what is missing or invented, and no more. */
export function cardChips(view: TrialInView): Chip[] {
  return [...stateChips(view), ...audienceChips(view.trial.audience), ...inventedChips(isInvented(view))];
}

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

function changeChips(view: TrialInView): Chip[] {
  const [only] = view.gains;
  if (!only || view.gains.length > 1) return [];
  const things = thingsChanged(view.answer.changes[only.changed.key] ?? []);
  if (things.length === 0) return [];
  return things.length === 1
    ? [{ text: `One change: ${inSentence(things[0]!)}`, tone: 'quiet' }]
    : [{ text: `${things.length} things changed`, tone: 'caution' }];
}

function dayChips(view: TrialInView): Chip[] {
  if (view.gains.length === 0) return [];
  const days = countedPulls(view).map(({ pull }) => pull.recordedAt?.slice(0, 10) ?? null);
  if (days.includes(null)) return [{ text: 'Days not noted', tone: 'caution' }];
  const different = new Set(days).size;
  return different === 1
    ? [{ text: 'Same day', tone: 'quiet' }]
    : [{ text: `${different} days`, tone: 'quiet' }];
}

function conditionChips(view: TrialInView): Chip[] {
  const differing = view.comparison?.conditions.filter(({ state }) => state === 'differs').length ?? 0;
  if (differing === 0 || view.gains.length === 0) return [];
  return [
    { text: `${counted(differing, 'condition')} ${differing === 1 ? 'differs' : 'differ'}`, tone: 'caution' },
  ];
}
