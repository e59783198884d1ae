import { writeSaid } from '@pullbook/core/quantity';
import type { Remark, Result } from '@pullbook/core/remark';
import type { Shared } from './shared-options.ts';

/** Exit code of what a person stopped with Ctrl+C, as shells have it. */
export const INTERRUPTED = 130;

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
  return new Refusal(spoken(remarks)[0]?.code ?? 'refused', refusalText(remarks, null), remarks);
}

/** What refuses, one line a remark, in the units a person chose; `null`: SI. */
export function refusalText(remarks: readonly Remark[], view: Shared['view'] | null): string {
  const written = ({ message, parts, ...place }: Remark) =>
    placed({ ...place, message: view === null ? message : writeSaid(message, parts, view) });
  return spoken(remarks).map(written).join('\n');
}

function spoken(remarks: readonly Remark[]): readonly Remark[] {
  const refusing = remarks.filter((one) => one.level === 'refusal');
  return refusing.length > 0 ? refusing : remarks;
}

/** `line 3, column 2: …` */
function placed(remark: { message: string; line?: number; column?: number }): string {
  const place = [
    ...(remark.line === undefined ? [] : [`line ${remark.line}`]),
    ...(remark.column === undefined ? [] : [`column ${remark.column}`]),
  ].join(', ');
  return place === '' ? remark.message : `${place}: ${remark.message}`;
}
