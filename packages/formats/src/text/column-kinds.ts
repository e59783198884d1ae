import { type CellKind, cellKind } from './cell-number.ts';
import type { HeaderPlace } from './find-header.ts';
import type { Separators } from './sniff-layout.ts';
import { eachRecord, type TextBytes } from './split-records.ts';

const SAMPLE_ROWS = 300;

export type ColumnKind = 'number' | 'clock' | 'text';

type Tally = Record<CellKind, number>;

/** What each column holds, by the first data rows: words only where words outnumber numbers. */
export function sampleColumnKinds(text: TextBytes, separators: Separators, place: HeaderPlace): ColumnKind[] {
  const tallies: Tally[] = [];
  let rows = 0;
  eachRecord(text, separators.delimiter, (fields, line) => {
    if (line < place.firstDataLine) return true;
    fields.slice(0, Math.max(place.dataWidth, place.names.length)).forEach((field, column) => {
      const tally = tallies[column] ?? { number: 0, clock: 0, text: 0, missing: 0 };
      tally[cellKind(field, separators.decimalMark)] += 1;
      tallies[column] = tally;
    });
    rows += 1;
    return rows < SAMPLE_ROWS;
  });
  const width = usedWidth(tallies, place);
  return Array.from({ length: width }, (_, column) => {
    const tally = tallies[column] ?? { number: 0, clock: 0, text: 0 };
    if (tally.clock > tally.number && tally.clock > tally.text) return 'clock';
    return tally.text > tally.number ? 'text' : 'number';
  });
}

/** Columns with a name or a filled cell; empty ones at the end of every row are no columns. */
function usedWidth(tallies: readonly Tally[], place: HeaderPlace): number {
  let width = Math.max(place.names.length, tallies.length);
  while (width > 0) {
    const tally = tallies[width - 1];
    const named = (place.names[width - 1] ?? '').trim() !== '';
    if (named || (tally && tally.number + tally.clock + tally.text > 0)) break;
    width -= 1;
  }
  return width;
}
