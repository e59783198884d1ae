import { mayAndMayNot } from '../may-say.ts';
import { fullName, type TrialInView } from '../trial-in-view.ts';
import { counted } from '../wording.ts';
import { combinationPicture } from './combination-card.ts';
import { engineFacts } from './footer.ts';
import type { MadeStep } from './own-step.ts';
import { onlyOf } from './panels.ts';
import { shortCaveats, told, whyPicture, wordsPicture } from './word-cards.ts';

/** More combinations than these are counted and not named one by one. */
const MOST_NAMED = 4;

/** The question, and under it what is put on the brake to answer it. */
export function askedStep(view: TrialInView): MadeStep {
  const names = view.combinations.map(({ key, shortName }) => `${key} ${shortName}`.trim());
  const isPair = names.length === 2 && view.state !== 'survey';
  const more = names.length - MOST_NAMED;
  const shown = names.slice(0, MOST_NAMED).join(isPair ? ' against ' : '; ');
  const picture = wordsPicture(view.trial.question, '', [
    { text: more > 0 ? `${shown}; and ${more} more` : shown },
    { text: engineFacts(view).join(' · '), quiet: true },
  ]);
  return { picture, whyNot: '' };
}

/** One change: what it is, line by line. Several, or a survey: each in a row. */
export function combinationStep(view: TrialInView): MadeStep {
  const [, only, more] = view.combinations;
  const nothing = 'No sheet says what it is made of.';
  if (view.state !== 'survey' && only !== undefined && more === undefined)
    return { picture: combinationPicture(view, only), whyNot: nothing };
  if (view.combinations.length === 1)
    return { picture: combinationPicture(view, view.baseline), whyNot: nothing };
  const MOST_ROWS = 10;
  const isSurvey = view.state === 'survey';
  const rows = view.combinations.map((item) => {
    const lines = view.answer.changes[item.key] ?? [];
    const [line] = lines;
    const text =
      isSurvey || item === view.baseline
        ? engineFacts(onlyOf(view, item)).join(', ')
        : lines.length === 1 && line
          ? `${line.label}: ${line.after ?? 'not on the sheet'}`
          : lines.length === 0
            ? 'nothing changed on its sheet'
            : `${counted(lines.length, 'line')} changed`;
    return { label: fullName(item), text, before: null, isChanged: !isSurvey && item !== view.baseline };
  });
  const shown = rows.slice(0, MOST_ROWS);
  const rest = rows.length - shown.length;
  const alternative = `${rows.map(({ label, text }) => `${label}: ${text}`).join('. ')}.`;
  return {
    picture: {
      headline: isSurvey
        ? `${view.combinations.length} engines`
        : `${counted(view.combinations.length - 1, 'change')} against ${fullName(view.baseline)}`,
      subline: rest > 0 ? `And ${rest} more.` : '',
      body: { kind: 'facts', rows: shown },
      alternative,
    },
    whyNot: nothing,
  };
}

/** The reason of the one gain, or of the first that has one. */
export function whyStep(view: TrialInView): MadeStep {
  const [first] = told(view);
  return {
    picture:
      first === undefined ? null : whyPicture(view, first, { subline: '', mostEvidence: 2, isBrief: true }),
    whyNot: 'No reason is told: no gain is shown that one could be told of.',
  };
}

/** What to know before believing it: what the page says of it, and what may not be said. */
export function caveatStep(view: TrialInView): MadeStep {
  const MOST_CAVEATS = 2;
  const MOST_NOT = 1;
  const LONGEST = 200;
  const known = shortCaveats(view).slice(0, MOST_CAVEATS);
  const not = mayAndMayNot(view)
    .flatMap(({ mayNot }) => mayNot)
    .filter((text) => text.length <= LONGEST)
    .slice(0, MOST_NOT);
  const lines = [
    ...known,
    ...not.map((text) => `May not be said: ${text.charAt(0).toLowerCase()}${text.slice(1)}`),
  ];
  const picture = wordsPicture(
    'Before you believe it',
    '',
    lines.map((text, place) => (place === 0 ? { text } : { text, quiet: true })),
  );
  return { picture: lines.length === 0 ? null : picture, whyNot: 'Nothing is known that stands against it.' };
}
