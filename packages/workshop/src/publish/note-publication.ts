import { randomUUID } from 'node:crypto';
import { figuresOf, type Publication, type PublicationKind } from '@pullbook/core/publication';
import { type Remark, remark } from '@pullbook/core/remark';
import type { TrialAnswer } from '@pullbook/core/trial';
import { type Book, BookTrouble } from '@pullbook/store';
import { heldBack, plainText, trialPage, type ViewOptions } from '@pullbook/views';

/** What of a publication its answer does not say. */
export interface Noted {
  /** Its averages were taken over a window that was only looked at: nothing can be said later of whether they still hold. */
  isWindowed: boolean;
  files: Publication['files'];
  privateToo: boolean;
}

const OVER_A_WINDOW = new Set(['averagePower', 'meanGain', 'meanGainRatio']);

/**
 * Notes what left the shop: with its figures, the sentence as it was said, every pull they rest on. Files that stand already
 * are not taken back because the book is full; then a remark says that they are not noted.
 */
export async function notePublication(
  book: Book,
  answer: TrialAnswer,
  options: ViewOptions,
  noted: Noted,
): Promise<{ id: string | null; remarks: Remark[] }> {
  const said = publicationOf(answer, options, noted);
  const publication: Publication = {
    ...said,
    privateToo: said.privateToo || (noted.privateToo && (await heldPrivatePulls(book, answer, noted.files))),
    id: randomUUID(),
    links: [],
    at: new Date().toISOString(),
  };
  try {
    await book.addPublication(publication);
    return { id: publication.id, remarks: [] };
  } catch (trouble) {
    if (!(trouble instanceof BookTrouble)) throw trouble;
    const message = `The files are made, but the book could not note that they were published: ${trouble.message} Publish once more to have it noted.`;
    return { id: null, remarks: [remark('caution', 'not-noted', message)] };
  }
}

/** What is noted of an answer that leaves the shop. */
export function publicationOf(
  answer: TrialAnswer,
  options: ViewOptions,
  { files, privateToo, isWindowed }: Noted,
): Omit<Publication, 'id' | 'links' | 'at'> {
  const { trial } = answer;
  return {
    trialId: trial.id,
    question: trial.question,
    sentence: plainText(trialPage(answer, options).sentence),
    kinds: [...new Set(files.map(({ kind }): PublicationKind => kind))],
    files,
    pullIds: trial.pulls.flatMap(({ pullId, role }) => (role === 'counted' ? [pullId] : [])),
    correction: trial.correction,
    figures: figuresOf(answer)
      .filter(({ id }) => !isWindowed || !OVER_A_WINDOW.has(id))
      .map((figure) => ({ ...figure, units: options.units })),
    privateToo: privateToo && heldBack(answer).length > 0,
  };
}

/** A bundle carries pulls that do not count too; what is told of the trial elsewhere leaves private ones of them out. */
async function heldPrivatePulls(
  book: Book,
  { trial }: TrialAnswer,
  files: Publication['files'],
): Promise<boolean> {
  if (!files.some(({ kind }) => kind === 'bundle')) return false;
  const whole = await book.trial(trial.id);
  return whole !== null && whole.pulls.length > trial.pulls.length;
}
