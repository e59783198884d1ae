import { accepted, type Remark, type Result, remark } from '@pullbook/core/remark';
import { type Book, type MergeReport, mergeBooks } from '@pullbook/store';

/**
 * Brings everything of another book into this one, by global ids, in one step. What needs a person's eye comes as remarks:
 * what both changed, what was renamed, what the other no longer has whole. `dryRun`: says it and writes nothing.
 */
export async function mergeIntoBook(
  book: Book,
  otherFolder: string,
  { dryRun }: { dryRun: boolean },
): Promise<Result<MergeReport>> {
  const report = await mergeBooks(book.folder, otherFolder, { dryRun });
  const { invented } = await book.info();
  return accepted(report, remarksOn(report, invented));
}

const CAUSES: Record<MergeReport['conflicts'][number]['why'], string> = {
  'both changed it': 'was changed in both books',
  'same file in both': 'was imported in both books from the same file',
  'no log tells which is later': 'stands otherwise in what was brought, and nothing tells which is later',
};

/** As a person says it; the others are said as the log names them. */
const wordOf = (kind: string): string => (kind === 'compressorMap' ? 'compressor map' : kind);

function remarksOn(report: MergeReport, isOurInvented: boolean): Remark[] {
  const { other, conflicts, samePulls, renamed, damaged, missingOriginals } = report;
  const remarks: Remark[] = [];
  const say = (code: string, message: string) => remarks.push(remark('caution', code, message));
  if (other.invented && !isOurInvented)
    say(
      'merge-invented',
      `"${other.name}" is an invented book. What came from it is marked invented wherever it is shown.`,
    );
  for (const { kind, name, why, fields } of conflicts) {
    const named = fields.map(({ field }) => field).join(', ');
    const cause = CAUSES[why];
    say(
      'merge-conflict',
      `The ${wordOf(kind)} "${name}" ${cause} (${named}). It stays as it is here; what the other book says is in the history.`,
    );
  }
  for (const { kind, from, to } of renamed)
    say('merge-renamed', `The ${wordOf(kind)} "${from}" came in as "${to}": the name is taken here.`);
  if (samePulls.length > 0)
    remarks.push(
      remark(
        'note',
        'merge-same-pulls',
        `${samePulls.length} pulls are in both books from the same bytes; they are here once, and the other's trials use them.`,
      ),
    );
  for (const { name } of damaged)
    say('merge-damaged', `The pull "${name}" is damaged in the other book and did not come in.`);
  for (const { name } of missingOriginals)
    say(
      'merge-original-missing',
      `The other book no longer has the original of "${name}" whole; its pulls came in.`,
    );
  return remarks;
}
