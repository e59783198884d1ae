import type { PictureBody, StillDescription } from '@pullbook/charts';
import type { Ground, NearPull } from '@pullbook/core/reach';
import { dayText } from '../date.ts';
import type { ViewOptions } from '../model.ts';
import type { Signature } from '../publish/picture.ts';
import { wordsPicture } from '../publish/word-cards.ts';
import type { KeptEnquiry } from '../reach-model.ts';
import { plainText } from '../sentence.ts';
import { correctionName } from '../standard-name.ts';
import { capitalised, counted } from '../wording.ts';
import { limitLine } from './limit-words.ts';
import { type ReachInView, reachInView } from './reach-in-view.ts';
import { titleOf } from './reach-page.ts';
import { reachSentence, whyNot } from './reach-sentence.ts';
import {
  chanceText,
  changesText,
  phrase,
  powerWithBand,
  sentenceOf,
  targetText,
  whereText,
} from './reach-words.ts';
import { rungChart } from './rung-chart.ts';

type Paragraph = Extract<PictureBody, { kind: 'words' }>['paragraphs'][number];

/** What a card shows under its question: sentences, or the curves of one way. */
export type CardShows = 'words' | 'curves';

/** No more pulls than these on a card, the nearest. */
const MOST_NEAR = 2;

/**
 * The answer to a target as a picture to show: what was asked, the way with its band and chance, what each change rests on, what binds
 * first, the nearest that was measured. Computed, and it says so where nobody can overlook it. Of one rung where it is named.
 *
 * @example answerCard(kept, { units: 'us', decimalMark: '.' }, null, {})
 */
export function answerCard(
  kept: KeptEnquiry,
  options: ViewOptions,
  signature: Signature,
  { rungId = null, shows = 'words' }: { rungId?: string | null; shows?: CardShows } = {},
): StillDescription {
  const view = { ...reachInView({ kept, rungId }, options), chosenKey: 'Then' };
  const picture = shows === 'curves' && view.chosen !== null ? curves(view) : words(view, rungId);
  return {
    ...picture,
    footer: footerOf(view),
    warning: 'Computed, not measured: a planning aid',
    signature,
  };
}

function words(view: ReachInView, rungId: string | null) {
  const answer = rungId === null ? answerText(view) : wayText(view);
  // Where none reaches, the answer is of no single way.
  const isOfWay = rungId !== null || view.answer?.feasible === true;
  const under = isOfWay ? [...groundLines(view), bindsText(view)] : whyNot(view);
  const quiet = [...under, nearText(view)].map((text): Paragraph => ({ text, quiet: true }));
  const paragraphs: Paragraph[] = [{ text: answer }, ...quiet];
  return wordsPicture(titleOf(view), '', paragraphs);
}

/** The grounds as the shop says them to others. */
const GROUNDS: Record<Ground, string> = {
  'measured by you': 'measured by us',
  'scaled from your data': 'scaled from our pulls',
  'rule of thumb': 'a rule of thumb',
};

/** What each change rests on; of one alone the answer has named it. */
function groundLines({ chosen, options }: ReachInView): string[] {
  const changes = chosen?.changes ?? [];
  return changes.map(({ said, ground, from }) =>
    changes.length === 1
      ? `${capitalised(GROUNDS[ground])}: ${sentenceOf(from, options)}`
      : `${capitalised(phrase(said, options))}: ${GROUNDS[ground]}.`,
  );
}

function curves(view: ReachInView) {
  const chart = rungChart(view);
  return {
    headline: outcomeText(view),
    // Parts that leave whole where there is no room for all.
    subline: [howText(view), bindsText(view), nearText(view)]
      .filter((text) => text !== '')
      .map(withoutStop)
      .join(' · '),
    body: {
      kind: 'stack' as const,
      chart: { ...chart, panels: chart.panels.filter(({ id }) => id !== 'torque') },
    },
    alternative: chart.alternative,
  };
}

/** The page's own sentence without what the picture says elsewhere. */
function answerText(view: ReachInView): string {
  const reaching = view.answer?.feasible ? view.rungs.find(({ reaches }) => reaches) : undefined;
  if (reaching !== undefined && !view.now?.reaches) return wayText(view);
  return plainText(reachSentence(view).filter(({ quiet }) => quiet !== true));
}

/** `528 hp (505 to 551) with blower pulley 80 mm and longer cam; 520 hp is likely, 84 of 100.` */
function wayText(view: ReachInView): string {
  const { chosen, show, target, options } = view;
  if (chosen === null) return plainText(reachSentence(view));
  const how = changesText(chosen, options);
  const chance = chanceText(chosen);
  const made = `${powerWithBand(show, chosen.reached)}${whereText(show, target)} ${how === '' ? 'as it is now' : `with ${how}`}`;
  const outcome = chosen.reaches ? made : `${made}, short of ${targetText(show, target)}`;
  return `${outcome}${chance === '' ? '' : `; ${show.power(target.power)} is ${chance}`}.`;
}

/** `528 hp (505 to 551); 520 hp is likely, 84 of 100` */
function outcomeText({ chosen, show, target }: ReachInView): string {
  if (chosen === null) return '';
  const made = `${powerWithBand(show, chosen.reached)}${whereText(show, target)}`;
  const chance = chanceText(chosen);
  if (!chosen.reaches) return `${made}, short of ${targetText(show, target)}`;
  return chance === '' ? made : `${made}; ${show.power(target.power)} is ${chance}`;
}

const howText = ({ chosen, options }: ReachInView): string => {
  const how = chosen === null ? '' : changesText(chosen, options);
  return how === '' ? 'As it is now' : `With ${how}`;
};

const withoutStop = (text: string): string => text.replace(/\.$/u, '');

const bindsText = ({ chosen, show }: ReachInView): string =>
  chosen?.bindsFirst ? `Binds first: ${limitLine(show, chosen.bindsFirst)}.` : '';

/** `Measured nearest: “longer cam, 84 mm”: 520 hp (3 pulls).` */
function nearText(view: ReachInView): string {
  const { target, keptNear, show } = view;
  if (keptNear.length === 0) return '';
  const apart = ({ power }: NearPull) => Math.abs(power - target.power);
  const nearest = keptNear
    .toSorted((one, other) => apart(one) - apart(other))
    .slice(0, MOST_NEAR)
    .map(({ name, pullIds, power, isSameEngine }) => {
      const pulls = counted(pullIds.length, 'pull');
      return `“${name}”: ${show.power(power)} (${isSameEngine ? pulls : `${pulls} of another engine`})`;
    });
  return `Measured nearest: ${nearest.join('; ')}.`;
}

function footerOf({ standard, kept, name, isInvented, chosen }: ReachInView): string[] {
  const pulls = counted(kept?.enquiry.pullIds.length ?? 0, 'pull');
  const assumed = chosen?.assumptions.length ?? 0;
  const facts = [
    standard.id === 'observed' ? 'as observed' : correctionName(standard.id),
    `computed from ${pulls}`,
    assumed === 0 ? '' : counted(assumed, 'assumption'),
    dayText(kept?.enquiry.at ?? null),
    isInvented ? 'invented data' : '',
  ];
  return [capitalised(name), capitalised(facts.filter((part) => part !== '').join(' · '))];
}
