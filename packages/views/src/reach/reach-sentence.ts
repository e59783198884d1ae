import { writeSaid } from '@pullbook/core/quantity';
import type { Rung } from '@pullbook/core/reach';
import type { SentencePart } from '../model.ts';
import type { ReachPage } from '../reach-model.ts';
import { capitalised, counted, inSentence } from '../wording.ts';
import { leftWords } from './limit-words.ts';
import type { ReachInView } from './reach-in-view.ts';
import {
  chanceText,
  changesText,
  isBarely,
  nearestOf,
  powerBand,
  powerWithBand,
  sentenceOf,
  targetText,
} from './reach-words.ts';

/**
 * The answer in a sentence: the cheapest way, what it makes, how sure, what binds first; or why there is none and the least that would
 * help; or that it is there already.
 *
 * @example 520 hp is reached with blower pulley 80 mm in place of 84 mm and longer cam: 528 hp (505 to 551), likely, 84 of 100.
 */
export function reachSentence(view: ReachInView): SentencePart[] {
  const { answer, rungs, now, show, target, options } = view;
  const refusal = view.remarks.find(({ level }) => level === 'refusal');
  if (refusal !== undefined && rungs.length === 0)
    return [{ text: writeSaid(refusal.message, refusal.parts, options) }];
  const [first] = rungs;
  const asked = targetText(show, target);
  if (answer === null) {
    return [
      {
        text:
          first === undefined
            ? `Looking for ways to ${asked}.`
            : `Looking for ways to ${asked}: ${counted(rungs.length, 'way')} so far.`,
      },
    ];
  }
  if (now?.reaches) return thereAlready(view, now, asked);
  const reaching = rungs.find(({ reaches }) => reaches);
  if (!answer.feasible || reaching === undefined) return outOfReach(view, asked);
  const how = changesText(reaching, options);
  return [
    {
      text: `${asked} is ${isBarely(reaching) ? 'barely ' : ''}reached ${how === '' ? 'as it is' : `with ${how}`}: `,
    },
    ...figures(view, reaching),
    ...bindsFirst(view, reaching),
    ...surer(view, reaching),
    ...held(view),
  ];
}

function figures({ show }: ReachInView, rung: Rung): SentencePart[] {
  const band = powerBand(show, rung.reached);
  const chance = chanceText(rung);
  return [
    { text: show.power(rung.reached.value), strong: true },
    { text: `${band === '' ? '' : ` (${band})`}${chance === '' ? '' : `, ${chance}`}.` },
  ];
}

function bindsFirst({ show }: ReachInView, { bindsFirst: limit }: Rung): SentencePart[] {
  if (limit === null) return [];
  const at = limit.engineSpeedRpm === null ? '' : ` at ${show.speed(limit.engineSpeedRpm)}`;
  return [
    { text: ` What binds first: ${inSentence(limit.label)}${at}, ${leftWords(show, limit)}.`, quiet: true },
  ];
}

/** Chance below which a surer way is told of, and by how much surer it has to be. */
const SURE_ENOUGH = 0.75;
const SURER_BY = 0.15;

/** Where the cheapest way is not likely enough, the cheapest of those that are surer by far. */
function surer({ rungs, show, options }: ReachInView, cheapest: Rung): SentencePart[] {
  if (!(cheapest.chance < SURE_ENOUGH)) return [];
  const one = rungs.find(
    ({ reaches, chance }) => reaches && chance >= Math.max(SURE_ENOUGH, cheapest.chance + SURER_BY),
  );
  if (one === undefined) return [];
  return [
    {
      text: ` Surer: ${changesText(one, options)}, ${powerWithBand(show, one.reached)}, ${chanceText(one)}.`,
      quiet: true,
    },
  ];
}

function thereAlready(view: ReachInView, now: Rung, asked: string): SentencePart[] {
  return [{ text: `${asked} is there already: “${view.name}” makes ` }, ...figures(view, now), ...held(view)];
}

function outOfReach(view: ReachInView, asked: string): SentencePart[] {
  return [
    { text: `${asked} is out of reach with what can be bought.`, strong: true },
    ...nearestWay(view),
    ...whyNot(view).map((text): SentencePart => ({ text: ` ${text}`, quiet: true })),
  ];
}

/** Why none reaches, and the least that would do: a sentence each. That less could be asked for, the nearest way has said. */
export function whyNot(view: ReachInView): string[] {
  const { answer, options } = view;
  const reason = answer?.reason ? sentenceOf(answer.reason, options) : '';
  const remedy = answer?.leastRemedy?.what === 'target' ? '' : remedyText(view);
  return [reason, remedy].filter((text) => text !== '');
}

/** The way that comes nearest, where none reaches. */
function nearestWay({ rungs, show, options }: ReachInView): SentencePart[] {
  const nearest = nearestOf(rungs);
  if (nearest === null) return [];
  const how = changesText(nearest, options);
  return [{ text: ` Nearest within the limits: ${powerWithBand(show, nearest.reached)} with ${how}.` }];
}

const remedyText = ({ answer, options }: ReachInView): string =>
  answer?.leastRemedy
    ? `The least that would do: ${lowerFirst(sentenceOf(answer.leastRemedy.said, options))}`
    : '';

/** A sentence that goes on after a colon. */
const lowerFirst = (text: string): string => inSentence(text).replace(/^A /u, 'a ');

/** What it is, held back. */
function held({ standard }: ReachInView): SentencePart[] {
  return [
    {
      text: ` Computed, not measured${standard.id === 'observed' ? ', as observed' : ''}: a planning aid.`,
      quiet: true,
    },
  ];
}

/** Why there is no way, with the remedies in their order; `null`: there is one, or nobody knows yet. */
export function infeasible(view: ReachInView): ReachPage['infeasible'] {
  const { answer, options, remedies, now } = view;
  if (answer === null || answer.feasible || now?.reaches) return null;
  if (answer.reason === null && answer.leastRemedy === null) return null;
  const least = answer.leastRemedy;
  return {
    reason: answer.reason === null ? '' : sentenceOf(answer.reason, options),
    remedy: least === null ? '' : sentenceOf(least.said, options),
    others: remedies
      .filter(({ said }) => said.text !== least?.said.text)
      .map(({ said }) => sentenceOf(said, options)),
  };
}

/** In few words, for an announcement as the ladder fills. */
export function spokenState(view: ReachInView): string {
  const { answer, rungs, show, target } = view;
  const ways = counted(rungs.length, 'way');
  if (answer === null) return rungs.length === 0 ? 'Searching.' : `${capitalised(ways)} so far.`;
  if (view.now?.reaches) return `${targetText(show, target)} is there already.`;
  const reaching = rungs.filter(({ reaches }) => reaches).length;
  return reaching === 0
    ? `No way to ${targetText(show, target)} within the limits.`
    : `${counted(reaching, 'way')} to ${targetText(show, target)}.`;
}
