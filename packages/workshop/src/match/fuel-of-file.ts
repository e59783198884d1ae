import type { OtherFuel } from '@pullbook/core/airpath';
import type { CombinationSheet } from '@pullbook/core/combination';
import { accepted, type Result } from '@pullbook/core/remark';
import type { MatchFile } from '@pullbook/formats';
import type { Book } from '@pullbook/store';
import { findPull } from '../find-named.ts';
import { otherFuelOf, otherFuelThan } from './fuels-of-match.ts';

/** The fuel of a match file's combination where it is another than its baseline's, which the file names or the book's pulls tell. */
export async function otherFuelOfFile(
  { baseline }: Pick<MatchFile, 'baseline'>,
  sheet: CombinationSheet,
  book: Book | null,
): Promise<Result<OtherFuel | null>> {
  if (baseline.fuel !== undefined) return otherFuelThan(baseline.fuel, sheet);
  const [first] = baseline.from === 'pulls' ? baseline.pulls : [];
  if (first === undefined || book === null) return accepted(null);
  const pull = await findPull(book, first);
  const id = pull.ok ? pull.value.combinationId : null;
  const behind = id === null ? null : await book.combination(id);
  return accepted(behind === null ? null : otherFuelOf(sheet, behind.sheet));
}
