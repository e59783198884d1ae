import type { ReportSection } from '../publish/model.ts';
import { saidGains } from '../said-gain.ts';
import { notSettledWords, settleWords } from '../settle-words.ts';
import { capitalised, counted, inSentence, listed } from '../wording.ts';
import { paragraph } from './answer-section.ts';
import type { ReportInView } from './report-in-view.ts';

/** The next step that the data ask for, what matters most first. */
export function nextSection({ view, page }: ReportInView): ReportSection {
  const isOpen = (word: string | undefined) => word === 'likely' || word === 'within-noise';
  const open = saidGains(view).filter(({ gain }) => isOpen(gain.verdict?.word));
  const settle = open.flatMap((said) => {
    const words = settleWords(said);
    // What may not be said stands above; its reason is the next step.
    const text = words === '' ? notSettledWords(said).replace(/^[^:]*: /u, '') : `${words}.`;
    return text === '' ? [] : [`${said.changed.key} against ${said.baseline.key}: ${capitalised(text)}`];
  });
  const unlike = (view.answer.state === 'survey' ? [] : page.likeForLike)
    .filter(({ isUnlike }) => isUnlike)
    .map(({ label }) => inSentence(label));
  const climbing = view.combinations.filter(({ figures }) => figures?.peakPower?.stillClimbing);
  const items = [
    ...page.missing,
    ...settle,
    ...(page.planned.length === 0
      ? []
      : [
          `${counted(page.planned.length, 'planned pull')} still to make: ${listed(page.planned.map(({ text }) => text.replace(/^planned: /, '')))}.`,
        ]),
    ...(unlike.length === 0 ? [] : [`Make alike before the next pull: ${listed(unlike)}.`]),
    ...page.why.flatMap(({ wouldSettle }) => (wouldSettle === '' ? [] : [`To settle why: ${wouldSettle}`])),
    ...(climbing.length === 0
      ? []
      : [
          `Where the power of ${listed(climbing.map(({ key }) => key))} peaks, only a pull to a higher engine speed can show; never above the lowest maker’s limit of engine, damper, coupling and brake.`,
        ]),
  ];
  return {
    id: 'next',
    title: 'Recommended next step',
    blocks:
      items.length > 0
        ? [{ kind: 'list', items }]
        : [paragraph('Nothing that these pulls ask for: the question is answered as it was put.')],
  };
}
