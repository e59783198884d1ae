import { accepted, type Result } from '@pullbook/core/remark';
import type { TrialAnswer } from '@pullbook/core/trial';
import type { Book } from '@pullbook/store';
import type { Paper, ViewOptions } from '@pullbook/views';
import type { ReportDescription } from '@pullbook/views/publish';
import { publishedNumbers } from '../edge/published-numbers.ts';
import { matchOfTrial } from '../match/match-bundle.ts';
import { engineOfPlan } from '../plan-engine.ts';
import { settingsOf } from '../settings.ts';
import { signatureOf } from '../signature.ts';
import type { Looking } from '../trial-answer.ts';
import { answerToPublish } from './answer-to-publish.ts';
import { publishedName, publishedStem } from './file-names.ts';
import type { FormatOf } from './model.ts';

/** Which form of the report is to be read, and how. */
export interface ReportRequest extends Looking {
  format: FormatOf<'report'>;
  paper?: Paper | undefined;
  privateToo?: boolean | undefined;
}

/** A report as a file. */
export interface ReportFile {
  bytes: Uint8Array;
  mediaType: string;
  fileName: string;
}

/** The report of a trial, to read: nothing is noted. */
export async function reportOf(
  book: Book,
  trialId: string,
  options: ViewOptions,
  request: ReportRequest,
): Promise<Result<ReportFile>> {
  const found = await answerToPublish(book, trialId, request, ['report']);
  if (!found.ok) return found;
  const { trial } = found.value;
  const { format, paper = 'a4' } = request;
  return accepted({
    bytes: await drawnReport(book, found.value, options, { format, paper }),
    mediaType: format === 'html' ? 'text/html; charset=utf-8' : 'application/pdf',
    fileName: publishedName(publishedStem(trial.question, trial.id), ['report'], format),
  });
}

/** The bytes of a report, in one of its forms. */
export async function drawnReport(
  book: Book,
  answer: TrialAnswer,
  options: ViewOptions,
  { format, paper }: { format: FormatOf<'report'>; paper: Paper },
): Promise<Uint8Array> {
  const { reportHtml, reportPdf } = await import('@pullbook/publish');
  const report = await describedReport(book, answer, options);
  const numbers = publishedNumbers(answer);
  return format === 'html'
    ? new TextEncoder().encode(await reportHtml(report, { numbers }))
    : reportPdf(report, { numbers, paper });
}

async function describedReport(
  book: Book,
  answer: TrialAnswer,
  options: ViewOptions,
): Promise<ReportDescription> {
  const { reportDescription } = await import('@pullbook/views/publish');
  const { shopContact } = await settingsOf(book);
  const match = await matchOfTrial(book, answer.trial.id);
  const more = {
    cells: await book.cells(),
    engine: engineOfPlan(answer),
    contact: shopContact,
    match: match.ok ? match.value : null,
  };
  return reportDescription(answer, options, await signatureOf(book), more);
}
