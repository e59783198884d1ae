import type { Publication } from '@pullbook/core/publication';
import { accepted, type Result } from '@pullbook/core/remark';
import type { Book } from '@pullbook/store';
import type { ViewOptions } from '@pullbook/views';
import type { Looking } from '../trial-answer.ts';
import { answerToPublish } from './answer-to-publish.ts';
import { notePublication } from './note-publication.ts';

/** Notes files that a page made itself of a trial, with the figures of the trial as if they had been made here. */
export async function noteMadeElsewhere(
  book: Book,
  trialId: string,
  options: ViewOptions,
  { files, privateToo, ...looking }: Looking & { files: Publication['files']; privateToo: boolean },
): Promise<Result<{ id: string | null }>> {
  const kinds = files.map(({ kind }) => kind);
  const found = await answerToPublish(book, trialId, { ...looking, privateToo }, kinds);
  if (!found.ok) return found;
  const { id, remarks } = await notePublication(book, found.value, options, {
    files,
    privateToo,
    isWindowed: looking.averagesWindowRpm !== undefined,
  });
  return accepted({ id }, remarks);
}
