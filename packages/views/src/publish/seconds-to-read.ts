import type { PictureBody } from '@pullbook/charts';
import type { OwnStep } from './own-step.ts';

/** Words that a viewer reads in a second besides looking: slower than in a book. Common practice, no source. */
const WORDS_A_SECOND = 3.5;
/** Smaller letters are for who stops the clip: half of them are read in passing. */
const READ_OF_QUIET = 0.5;
/** To find where to look, s; and for a curve, to follow it. */
const TO_FIND = 1;
const TO_FOLLOW = 2;
const SHORTEST = 2.5;
const LONGEST = 9;
/** A clip that nobody timed is no longer than this, s: its steps shrink alike. */
const LONGEST_CLIP = 48;

/** The steps with the time that each takes by how much there is to read. A step that falls out has its time too. */
export function secondsToRead(steps: readonly OwnStep[]): OwnStep[] {
  const timed = steps.map((step) => ({ ...step, seconds: secondsOf(step) }));
  const whole = timed.reduce((sum, { picture, seconds }) => sum + (picture === null ? 0 : seconds), 0);
  const shrink = Math.min(1, LONGEST_CLIP / whole);
  // Tenths, so that a person can read and set them; downward, so that the whole stays within its limit.
  return timed.map((step) => ({ ...step, seconds: Math.floor(10 * step.seconds * shrink + 1e-9) / 10 }));
}

function secondsOf({ picture }: OwnStep): number {
  if (picture === null) return SHORTEST;
  const { large, quiet } = textsOf(picture.body);
  const words = wordsIn([picture.headline, ...large]) + READ_OF_QUIET * wordsIn([picture.subline, ...quiet]);
  const look = picture.body.kind === 'stack' ? TO_FIND + TO_FOLLOW : TO_FIND;
  return Math.min(LONGEST, Math.max(SHORTEST, look + words / WORDS_A_SECOND));
}

const wordsIn = (texts: readonly string[]): number => texts.join(' ').split(/\s+/).filter(Boolean).length;

/** What there is to read besides headline and subline. Names at the ends of curves say what the headline says. */
function textsOf(body: PictureBody): { large: string[]; quiet: string[] } {
  switch (body.kind) {
    case 'stack':
      return { large: body.chart.panels.map(({ title }) => title), quiet: [] };
    case 'number':
      return { large: [body.number, body.band, body.what], quiet: [] };
    case 'table':
      return { large: [], quiet: body.rows.flat().map(({ text }) => text) };
    case 'facts': {
      const told = (changed: boolean) =>
        body.rows.flatMap(({ label, text, isChanged }) => (isChanged === changed ? [label, text] : []));
      return { large: told(true), quiet: told(false) };
    }
    case 'badges':
      return { large: body.badges.map(({ label }) => label), quiet: [] };
    case 'words': {
      const told = (isQuiet: boolean) =>
        body.paragraphs.flatMap(({ text, quiet = false }) => (quiet === isQuiet ? [text] : []));
      return { large: told(false), quiet: told(true) };
    }
  }
}
