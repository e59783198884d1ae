import { type Said, said } from '../remark/index.ts';
import { type JudgedStory, judgeStory } from './judge-story.ts';
import { AGAIN, canBeMeasured, measuredBy, settledBy } from './measurements.ts';
import type { Explanation, Story } from './model.ts';
import type { About, ExplainInput } from './observation.ts';
import { STORIES } from './stories.ts';
import type { Facts } from './story.ts';

/** Observations beyond power itself that must agree before a story is told as the likeliest. Our choice. */
const LEAST_AGREEING = 2;
/** More than these are a list, not an answer. */
const MOST_NOT_EXCLUDED = 3;

/**
 * Why a change did what it did: the story with which most observations agree and none disagrees, what the data cannot
 * exclude beside it, and the one measurement that would part the two. Silent where there is nothing to explain, and where
 * fewer than two observations beyond power agree. Rules of thumb, not a model: no figure comes out of it.
 *
 * @example explain({ verdict: 'clear', observations: [powerUp, boostDown, fuelUp], … }).likeliest?.id // 'breathes-better'
 */
export function explain(input: ExplainInput): Explanation {
  const silent = nothingToExplain(input);
  if (silent !== null) return silence(input, silent);
  const facts: Facts = { input, of: (about) => input.observations.find((one) => one.about === about) };
  const judged = STORIES.flatMap((entry) => judgeStory(entry, input, facts) ?? []).sort(byAgreement);
  const likeliest = judged.find(isLikeliest) ?? null;
  const open = judged.filter((one) => isOpen(one) && !isKin(one, likeliest)).slice(0, MOST_NOT_EXCLUDED);
  const notExcluded = open.map(({ story }) => story);
  if (likeliest === null)
    return {
      ...silence(input, tooLittle(judged)),
      notExcluded,
      wouldSettle: open[0] === undefined ? null : settling(open[1] ?? open[0], open[0], facts),
    };
  return {
    changedKey: input.changedKey,
    likeliest: likeliest.story,
    notExcluded,
    wouldSettle: open[0] === undefined ? null : settling(likeliest, open[0], facts),
    silent: null,
  };
}

function nothingToExplain({ verdict }: ExplainInput): Said | null {
  if (verdict === null) return said`Nothing is explained while nobody knows how sure the difference is.`;
  if (verdict === 'within-noise')
    return said`There is nothing to explain yet: the difference is within the noise.`;
  return null;
}

const isLikeliest = ({ story, beyondPower, isDecided }: JudgedStory): boolean =>
  story.disagree === 0 && isDecided && beyondPower >= LEAST_AGREEING;

/** Not told against by what decides it, and either something moved its way or nothing but its own measurement ends it. */
const isOpen = ({ entry, tells, isDecided, story }: JudgedStory): boolean =>
  tells || (isDecided && story.disagree === 0) || (entry.alwaysPossible === true && !isDecided);

/** Stories of one family say the same in other words: none is the alternative to another. */
const isKin = (one: JudgedStory, likeliest: JudgedStory | null): boolean =>
  one === likeliest || (one.entry.family !== undefined && one.entry.family === likeliest?.entry.family);

const byAgreement = (one: JudgedStory, other: JudgedStory): number =>
  Math.sign(one.story.disagree) - Math.sign(other.story.disagree) ||
  net(other.story) - net(one.story) ||
  one.story.unmeasured.length - other.story.unmeasured.length;

const net = ({ agree, disagree }: Story): number => agree - disagree;

/** The unmeasured thing that decides the second story, else one on which the two differ, else the baseline again. */
function settling(first: JudgedStory, second: JudgedStory, facts: Facts): Said {
  const open = (one: JudgedStory) =>
    one.entry.decidedBy.find((about) => facts.of(about) === undefined && canBeMeasured(about));
  const differing = first.story.unmeasured.find((about) =>
    second.entry.foretells[about as About]?.agrees.some((state) =>
      first.entry.foretells[about as About]?.contradicts.includes(state),
    ),
  ) as About | undefined;
  const about = open(second) ?? open(first) ?? differing;
  return about === undefined ? AGAIN : settledBy(about);
}

const silence = ({ changedKey }: ExplainInput, silent: Said): Explanation => ({
  changedKey,
  likeliest: null,
  notExcluded: [],
  wouldSettle: null,
  silent,
});

/** What to measure first, in the order in which it parts most stories. */
const WORTH_MEASURING: readonly About[] = [
  'fuelFlow',
  'boost',
  'lambda',
  'sparkAdvance',
  'chargeTemperature',
  'slip',
];

function tooLittle(judged: readonly JudgedStory[]): Said {
  const asked = new Set(judged.flatMap(({ story }) => story.unmeasured));
  const missing = WORTH_MEASURING.filter((about) => asked.has(about)).slice(0, 3);
  if (missing.length === 0)
    return said`What was measured agrees with none of the reasons known here: look at the curves and the notes.`;
  return said`Too little was measured to say why: ${LEAST_AGREEING} observations beside power must agree. Next time measure ${listed(missing.map(measuredBy))}.`;
}

function listed(items: readonly string[]): string {
  return items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}
