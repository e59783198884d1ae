/**
 * What a computation or a reading has to say beside its value, and the result of work that can fail
 * in an expected way. Broken assumptions throw; expected trouble comes back as a `refused` result.
 */

import { piecesOf, type Said, type SaidParts } from './said.ts';

export { type Figure, joined, piecesOf, type Said, type SaidParts, said } from './said.ts';

/** `note`: good to know. `caution`: the value stands but may mislead. `refusal`: there is no value because of this. */
export type RemarkLevel = 'note' | 'caution' | 'refusal';

export interface Remark {
  /** Stable short name in kebab case, for tests and for silencing: `barometer-looks-reduced`. */
  code: string;
  level: RemarkLevel;
  /** A full sentence for a mechanic: what, the value, what is allowed, what to do. */
  message: string;
  /** The message in pieces with its figures apart, where it has any: for a page that shows other units. */
  parts?: SaidParts;
  /** 1-based line in the file read, where there is one. */
  line?: number;
  /** 1-based column (field number of delimited text), where there is one. */
  column?: number;
}

export type Result<T> = { ok: true; value: T; remarks: Remark[] } | { ok: false; remarks: Remark[] };

/** A value with the remarks made on the way to it. */
export function accepted<T>(value: T, remarks: Remark[] = []): Result<T> {
  return { ok: true, value, remarks };
}

/** No value; the first remark should say why. */
export function refused(...remarks: [Remark, ...Remark[]]): { ok: false; remarks: Remark[] } {
  return { ok: false, remarks };
}

/** Makes one remark. `remark('caution', 'odd-factor', said`The factor is …`)` */
export function remark(
  level: RemarkLevel,
  code: string,
  message: string | Said,
  place: { line?: number; column?: number } = {},
): Remark {
  if (typeof message === 'string') return { code, level, message, ...place };
  return { code, level, message: message.text, ...piecesOf(message), ...place };
}

/** The message of a remark with its figures, to say it inside another. */
export const saidIn = ({ message, parts }: Remark): Said => ({ text: message, parts: parts ?? [message] });

/** The same remark with words before its message: the name of a field, a pull. */
export function remarkAbout(words: string, { parts, ...one }: Remark): Remark {
  const message = `${words}: ${one.message}`;
  return parts === undefined ? { ...one, message } : { ...one, message, parts: [`${words}: `, ...parts] };
}
