import { plainFromLines, type SheetLines } from './sheet-lines.ts';

/** A sheet somebody works at: line by line, or as text. */
export type SheetDraft = { shown: 'lines'; lines: SheetLines } | { shown: 'text'; text: string };

/** What is sent to be looked at and kept. */
export function draftText(draft: SheetDraft): string {
  return draft.shown === 'text' ? draft.text : JSON.stringify(plainFromLines(draft.lines));
}
