import { dayText } from '../date.ts';
import type { ViewOptions } from '../model.ts';
import type { EnquiryCard, KeptEnquiry } from '../reach-model.ts';
import { counted } from '../wording.ts';
import { reachInView } from './reach-in-view.ts';
import { chipsOf, titleOf } from './reach-page.ts';
import { reachSentence } from './reach-sentence.ts';

/** A line of what was asked before: the question, the answer in few words, when, and what became of it. */
export function enquiryCard(kept: KeptEnquiry, options: ViewOptions): EnquiryCard {
  const view = reachInView({ kept, rungId: null }, options);
  const { enquiry, sources } = kept;
  const trials = [...new Set(enquiry.became.map(({ trialId }) => trialId))];
  return {
    id: enquiry.id,
    question: titleOf(view),
    sentence: reachSentence(view).filter(({ quiet }) => quiet !== true),
    chips: chipsOf(view).filter(({ text }) => text !== 'Computed, not measured'),
    facts: [
      view.name,
      dayText(enquiry.at),
      counted(enquiry.pullIds.length, 'pull'),
      enquiry.cards.length === 0 ? '' : counted(enquiry.cards.length, 'card'),
    ]
      .filter((part) => part !== '')
      .join(' · '),
    became: trials.map((trialId) => ({
      text: `became ${sources.find(({ id }) => id === trialId)?.name ?? 'a trial'}`,
      trialId,
    })),
  };
}
