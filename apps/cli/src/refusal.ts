import type { Remark, Result } from '@pullbook/core/remark';

/** Something that could not be done, said so that a person can act on it. */
export class Refusal extends Error {
  readonly code: string;
  readonly remarks: Remark[];
  constructor(code: string, message: string, remarks: Remark[] = []) {
    super(message);
    this.code = code;
    this.remarks = remarks;
  }
}

/** The value of a result; a refused one is thrown as a `Refusal` with all its remarks. */
export function valueOrRefusal<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw refusalOf(result.remarks);
}

/** A refusal that speaks with every refusing remark. */
export function refusalOf(remarks: Remark[]): Refusal {
  const refusing = remarks.filter((one) => one.level === 'refusal');
  const spoken = refusing.length > 0 ? refusing : remarks;
  return new Refusal(spoken[0]?.code ?? 'refused', spoken.map((one) => placed(one)).join('\n'), remarks);
}

/** `line 3, column 2: …` */
export function placed(remark: { message: string; line?: number; column?: number }): string {
  const place = [
    ...(remark.line === undefined ? [] : [`line ${remark.line}`]),
    ...(remark.column === undefined ? [] : [`column ${remark.column}`]),
  ].join(', ');
  return place === '' ? remark.message : `${place}: ${remark.message}`;
}
