import type { PictureBody } from '@pullbook/charts';
import { shownBadges } from '../badges.ts';
import { caveats } from '../caveats.ts';
import { daysText } from '../date.ts';
import type { ShownExplanation } from '../model.ts';
import { saidGains } from '../said-gain.ts';
import { countedPulls, fullName, isInvented, type TrialInView } from '../trial-in-view.ts';
import { verdictFigures, verdictWords } from '../verdict-line.ts';
import { why } from '../why.ts';
import { capitalised, counted, inSentence, listed } from '../wording.ts';
import { claimLine, clearClaims } from './claim-words.ts';
import type { NamedPicture, Picture } from './picture.ts';

type Paragraph = Extract<PictureBody, { kind: 'words' }>['paragraphs'][number];

/** Sentences under a headline; the first is the largest. */
export function wordsPicture(headline: string, subline: string, given: readonly Paragraph[]): Picture {
  const paragraphs = given.filter(({ text }) => text !== '');
  return {
    headline,
    subline,
    body: { kind: 'words', paragraphs },
    alternative: paragraphs.map(({ text }) => text).join(' '),
  };
}

/** Which marks of an honest comparison were earned, and what stands in the way of the others. */
export function badgesCard(view: TrialInView): NamedPicture[] {
  const badges = shownBadges(view.answer.badges, view.show.options);
  if (badges.length === 0) return [];
  const [earned, not] = [badges.filter((one) => one.earned), badges.filter((one) => !one.earned)];
  const labels = (of: typeof badges) => listed(of.map(({ label }) => inSentence(label)));
  const words = [
    earned.length > 0 ? `Earned: ${labels(earned)}.` : '',
    not.length > 0 ? `Not earned: ${labels(not)}.` : '',
  ].filter(Boolean);
  return [
    {
      name: 'badges',
      key: null,
      title: 'Badges',
      headline: `${earned.length} of ${badges.length} badges of an honest comparison`,
      subline: claimLine(view),
      body: {
        kind: 'badges',
        badges: badges.map(({ label, earned: isEarned, why: reason }) => ({
          label,
          earned: isEarned,
          why: reason,
        })),
      },
      alternative: words.join(' '),
    },
  ];
}

/** Why each gain came out so, where the data tell a reason: the likeliest, what they cannot exclude, what would settle it. */
export const whyCards = (view: TrialInView): NamedPicture[] =>
  told(view).map((one): NamedPicture => {
    const isOne = told(view).length === 1;
    return {
      name: 'why',
      key: isOne ? null : one.key,
      title: isOne ? 'Why' : `Why, of ${one.key}`,
      ...whyPicture(view, one, { subline: claimLine(view), mostEvidence: MOST_EVIDENCE }),
    };
  });

export const told = (view: TrialInView): ShownExplanation[] =>
  why(view).filter(({ likeliest }) => likeliest !== null);

/** No more of what speaks for it than can be read on a picture. */
const MOST_EVIDENCE = 3;

export function whyPicture(
  view: TrialInView,
  one: ShownExplanation,
  /** `isBrief`: without what would settle it. */
  { subline, mostEvidence, isBrief = false }: { subline: string; mostEvidence: number; isBrief?: boolean },
): Picture {
  const changed = view.combinations.find(({ key }) => key === one.key);
  const name = changed === undefined ? one.key : fullName(changed);
  const others = one.notExcluded.map(({ text }) => inSentence(text).replace(/\.$/, ''));
  return wordsPicture(`Why: the likeliest reason for ${name}`, subline, [
    { text: one.sentence },
    ...one.evidence
      .filter(({ speaks }) => speaks === 'for')
      .slice(0, mostEvidence)
      .map(({ text }): Paragraph => ({ text, quiet: true })),
    { text: others.length > 0 ? `Not excluded: ${others.join('; ')}.` : '', quiet: true },
    { text: isBrief ? '' : one.wouldSettle, quiet: true },
  ]);
}

/** No more caveats than these on a card; the page and the report have all of them. */
const MOST_CAVEATS = 2;
/** Of many changes those that are clear; the table has all. */
const MOST_CLAIMS = 4;
/** A caveat longer than this is for the report. */
const LONGEST_CAVEAT = 260;

/** The answer to a viewer's question: what was asked, what the pulls say, how sure, what it rests on, what to know. */
export function replyCard(view: TrialInView): NamedPicture[] {
  return [
    {
      name: 'reply',
      key: null,
      title: 'Answer to a question',
      ...wordsPicture(view.trial.question, '', [
        { text: claimLine(view) },
        ...[...clearClaims(view).slice(0, MOST_CLAIMS), ...howSure(view)].map(
          (text): Paragraph => ({ text, quiet: true }),
        ),
        { text: evidenceWords(view), quiet: true },
        ...shortCaveats(view)
          .slice(0, MOST_CAVEATS)
          .map((text): Paragraph => ({ text, quiet: true })),
      ]),
    },
  ];
}

/** `Clear · +3.9 % (+0.7 to +7.2 %, at 95 %) · same day`: where one gain is claimed; of several the sentence says it. */
function howSure(view: TrialInView): string[] {
  const said = saidGains(view);
  const [only] = said;
  if (said.length !== 1 || !only || only.gain.verdict === null) return [];
  return [`${verdictWords(view.show, only.gain.verdict)} · ${verdictFigures(only)}`];
}

/** `Measured by us: 5 pulls on 14 March 2026, SAE J1349.`; what was only read off or remembered says so. */
export function evidenceWords(view: TrialInView): string {
  const pulls = countedPulls(view).map(({ pull }) => pull);
  if (pulls.length === 0) return 'Not measured yet: no pull is counted.';
  const measured = pulls.filter(({ origin }) => origin === 'measured').length;
  const others = [...new Set(pulls.map(({ origin }) => origin).filter((origin) => origin !== 'measured'))];
  const days = daysText(pulls.map(({ recordedAt }) => recordedAt));
  const on = days === '' ? '' : days.includes(' to ') || days.includes(' and ') ? `, ${days}` : ` on ${days}`;
  if (isInvented(view)) return `From ${counted(pulls.length, 'invented pull')}${on}: of no real engine.`;
  const own = measured > 0 ? `Measured by us: ${counted(measured, 'pull')}${on}` : '';
  const rest = others.length > 0 ? `${counted(pulls.length - measured, 'pull')} ${listed(others)}` : '';
  const both = [own, rest].filter(Boolean).join('; ');
  return `${capitalised(both)}.`;
}

export const shortCaveats = (view: TrialInView): string[] =>
  caveats(view).filter((text) => text.length <= LONGEST_CAVEAT && !/^Invented data/.test(text));
