import { guessedMapping, pullsFromReading, readTextFile } from './index.ts';
import type { FileReading, PullDraft } from './model.ts';

export const bytesOfText = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Reading of a text that must be accepted. */
export function readingOf(text: string, name = 'test.csv'): FileReading {
  const reading = readTextFile(bytesOfText(text), name);
  if (!reading.ok) throw new Error(reading.remarks.map(({ message }) => message).join('\n'));
  return reading.value;
}

/** Pulls of a text under the guessed mapping, which must be accepted. */
export function pullsOf(text: string, name = 'test.csv'): PullDraft[] {
  const reading = readingOf(text, name);
  const pulls = pullsFromReading(reading, guessedMapping(reading));
  if (!pulls.ok) throw new Error(pulls.remarks.map(({ message }) => message).join('\n'));
  return pulls.value;
}

export const codesOf = ({ remarks }: { remarks: { code: string }[] }): string[] =>
  remarks.map(({ code }) => code);
