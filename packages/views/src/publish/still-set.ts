import type { TrialAnswer } from '@pullbook/core/trial';
import type { ViewOptions } from '../model.ts';
import type { TrialInView } from '../trial-in-view.ts';
import { answerStill } from './answer-still.ts';
import { combinationCards } from './combination-card.ts';
import { aloneStills, channelStills, gainStill } from './curve-stills.ts';
import { type NamedStill, PICTURES, type PictureName } from './model.ts';
import { scaleOf } from './one-scale.ts';
import { gainsOverview, surveyCard } from './overview-card.ts';
import { onlyOf } from './panels.ts';
import { type NamedPicture, namedStill, type Signature } from './picture.ts';
import { plainTable } from './plain-table.ts';
import { publishedView } from './published-view.ts';
import { gainTables } from './speeds-card.ts';
import { temperaturesStill } from './temperatures-still.ts';
import { thumbnail } from './thumbnail.ts';
import { badgesCard, replyCard, whyCards } from './word-cards.ts';

/**
 * All pictures of a trial, in the order in which they are told, at one scale: one engine-speed range, and the panels of one
 * channel span the same in each. What a trial has nothing for is not among them; a survey's engines are one set.
 *
 * @example stillSet(answerTrial(input), { units: 'us', decimalMark: '.' }, null).map(({ title }) => title)
 */
export function stillSet(answer: TrialAnswer, options: ViewOptions, signature: Signature): NamedStill[] {
  const view = publishedView(answer, options);
  return picturesOf(view).map((picture) => namedStill(viewFor(view, picture), signature, picture));
}

/** One picture of the set, at the scale of the set; `null`: the trial has nothing for it. `key`: of which combination. */
export function stillNamed(
  answer: TrialAnswer,
  options: ViewOptions,
  signature: Signature,
  name: PictureName,
  key: string | null = null,
): NamedStill | null {
  const view = publishedView(answer, options);
  const picture = picturesOf(view).find((one) => one.name === name && one.key === key);
  return picture === undefined ? null : namedStill(viewFor(view, picture), signature, picture);
}

function picturesOf(view: TrialInView): NamedPicture[] {
  const scale = scaleOf(view);
  const pictures = [
    ...answerStill(view, scale),
    ...aloneStills(view, scale),
    ...channelStills(view, scale),
    ...gainStill(view, scale),
    ...temperaturesStill(view, scale),
    ...tablesOf(view),
    ...combinationCards(view),
    ...badgesCard(view),
    ...whyCards(view),
    ...replyCard(view),
    ...thumbnail(view, scale),
  ];
  return pictures.toSorted((one, other) => PICTURES.indexOf(one.name) - PICTURES.indexOf(other.name));
}

function tablesOf(view: TrialInView): NamedPicture[] {
  if (view.state === 'survey') return surveyCard(view);
  return view.gains.length > 0 ? [...gainsOverview(view), ...gainTables(view)] : plainTable(view);
}

/** What stands under a picture of one combination is about that one; a table of a gain is about both its sides. */
function viewFor(view: TrialInView, { name, key }: NamedPicture): TrialInView {
  const item = view.combinations.find((one) => one.key === key);
  return item !== undefined && (name === 'alone' || name === 'combination') ? onlyOf(view, item) : view;
}
