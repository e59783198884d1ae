import type { VerdictWord } from '@pullbook/core/scatter';
import { clauseOf, spokenGain } from '../gain-sentence.ts';
import { type SaidGain, saidGains } from '../said-gain.ts';
import { answerSentence, plainText } from '../sentence.ts';
import { asSubject, fullName, type TrialInView } from '../trial-in-view.ts';
import { capitalised, counted, listed } from '../wording.ts';

/** More gains, or engines of a survey, than these are counted: their sentence would fill the picture. */
const MOST_SPOKEN = 3;

/**
 * The answer's sentence in two sizes: what is claimed as the headline, the combination by its name since a picture stands
 * alone, and in smaller letters where it holds and what it rests on. No picture claims more than this.
 */
export function claimInTwo(view: TrialInView): { headline: string; subline: string } {
  const said = saidGains(view);
  const [only] = said;
  if (said.length === 1 && only) {
    const { claim, rest } = spokenGain(only, 'by name');
    return { headline: plainText(claim), subline: plainText(rest) };
  }
  const parts = answerSentence(view);
  const claim = plainText(parts.filter(({ quiet }) => !quiet));
  return {
    headline: countedClaim(view, said) ?? claim.replace(/ – $/, '.').trim(),
    subline: capitalised(plainText(parts.filter(({ quiet }) => quiet))),
  };
}

/** The claim in one line for under a headline that is about something else; without what it rests on. */
export function claimLine(view: TrialInView): string {
  const said = saidGains(view);
  const [only] = said;
  if (said.length !== 1 || !only) return claimInTwo(view).headline;
  const { claim, rest } = spokenGain(only, 'by name');
  const line = plainText([...claim, { text: ' ' }, ...rest.filter(({ quiet }) => !quiet)]);
  return line.replace(/: $/, '.');
}

/** Of many gains those that are clear, each with its band: `H, cam 7, clearly adds 23 hp (12 to 36).` */
export function clearClaims(view: TrialInView): string[] {
  const said = saidGains(view);
  if (countedClaim(view, said) === null) return [];
  return said
    .filter(({ gain }) => gain.verdict?.word === 'clear')
    .map(({ gain, changed, show }) => `${plainText(clauseOf(show, gain, asSubject(changed)))}.`);
}

const WORDS: readonly [word: VerdictWord, text: string][] = [
  ['clear', 'clear'],
  ['likely', 'likely'],
  ['no-difference', 'with no difference that matters'],
  ['within-noise', 'within the noise'],
];

/** `9 changes against A, base cam: 3 clear and 6 within the noise`; `null`: few enough to be spoken one by one. */
function countedClaim(view: TrialInView, said: readonly SaidGain[]): string | null {
  const engines = view.combinations.filter(({ figures }) => figures !== null);
  if (view.state === 'survey' && engines.length > MOST_SPOKEN)
    return `${engines.length} engines side by side`;
  if (said.length <= MOST_SPOKEN) return null;
  const verdicts = WORDS.flatMap(([word, text]) => {
    const number = said.filter(({ gain }) => gain.verdict?.word === word).length;
    return number === 0 ? [] : [`${number} ${text}`];
  });
  const lead = `${counted(said.length, 'change')} against ${fullName(view.baseline)}`;
  return verdicts.length === 0 ? lead : `${lead}: ${listed(verdicts)}`;
}
