import { isMissing } from './cell-number.ts';

const SUMMARY =
  /^(over ?all )?(averages?|avg|mean|max(imum|i)?|min(imum|i)?|massimo|m[aá]x|m[ií]n|peak|sum|total|std\.?( ?dev\.?)?|standard deviation|mittel(wert)?|durchschnitt|moyenne|media|promedio|m[aá]ximo|m[ií]nimo|minim(um|ale)|maxim(um|ale)|(maximal|minimal|spitzen)(wert)?)( values?| power| torque)?\s*[:.=]?$/i;

/** Whether a row that begins so sums up the others. */
export const isSummaryWord = (text: string): boolean => SUMMARY.test(text);

/** Why a row among the data is none. */
export type RowTrouble = 'repeated-header' | 'summary-row' | 'word-first-row' | 'words-row';

/** Tells rows that stand among the data and are none: the header again, averages and peaks, lines of words. */
export function rowTrouble(
  fields: readonly string[],
  header: readonly string[],
  units: readonly string[],
  isNumeric: (column: number) => boolean,
  readsAsNumber: (cell: string) => boolean,
): RowTrouble | null {
  const filled = fields.map((field) => field.trim());
  if (sameWords(filled, header) || sameWords(filled.map(withoutBrackets), units)) return 'repeated-header';
  const [first = '', second = ''] = filled.filter((field) => field !== '');
  if (isSummaryWord(first) || (isSummaryWord(second) && !readsAsNumber(first))) return 'summary-row';
  const holdsNumber = filled.some(
    (field, column) => field !== '' && isNumeric(column) && readsAsNumber(field),
  );
  const holdsWord = filled.some(
    (field, column) => field !== '' && isNumeric(column) && /\p{L}{2}/u.test(field),
  );
  if (holdsWord && !holdsNumber) return 'words-row';
  // Where the others have a reading a word names the row: `Highest`, `Std deviation`.
  return isNumeric(0) && /^\p{L}{3}[^\d]*$/u.test(filled[0] ?? '') && !isMissing(filled[0] ?? '')
    ? 'word-first-row'
    : null;
}

function sameWords(fields: readonly string[], other: readonly string[]): boolean {
  const words = other.map((name) => name.trim());
  if (words.filter((name) => name !== '').length < 2) return false;
  return words.every((name, column) => name === '' || fields[column] === name);
}

function withoutBrackets(text: string): string {
  return text.replace(/^[[(](.*)[\])]$/s, '$1').trim();
}
