import type { Remark } from '@pullbook/core/remark';

/** What became of a spoiled file, and what is wrong with that (`[]`: nothing). */
export interface Outcome {
  /** `null`: accepted. */
  refusedFor: string | null;
  pulls: number;
  faults: string[];
}

/** A file that was refused: with a reason, and with a place where its text is at fault. */
export function refusedOutcome(
  bytes: Uint8Array,
  remarks: readonly Remark[],
  { before = [], hasPlace = true }: { before?: readonly string[]; hasPlace?: boolean } = {},
): Outcome {
  const [first] = remarks;
  const faults = [...before];
  if (first?.level !== 'refusal' || first.message.length < 20) faults.push('refused without a reason');
  if (hasPlace && bytes.length > 0 && first?.line === undefined)
    faults.push(`refused without a place: ${first?.code}`);
  faults.push(...placeFaults(remarks, linesOf(bytes)));
  return { refusedFor: first?.code ?? 'no code', pulls: 0, faults };
}

export function placeFaults(remarks: readonly Remark[], lines: number): string[] {
  return remarks.flatMap(({ code, line, column }) => {
    if (line !== undefined && !(line >= 1 && line <= lines))
      return [`${code} stands in line ${line} of ${lines}`];
    return column !== undefined && !(column >= 1) ? [`${code} stands in column ${column}`] : [];
  });
}

/** Lines as the most that any encoding gives: every return or line feed may end one. */
export function linesOf(bytes: Uint8Array): number {
  let ends = 0;
  for (const byte of bytes) if (byte === 10 || byte === 13) ends += 1;
  return ends + 1;
}
