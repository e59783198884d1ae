import { momentText } from '@pullbook/views';

/** An instant by the clock of this machine: `14 March 2026 10:42`. */
export function momentHere(instant: string): string {
  // Swedish writes a date as ISO 8601 does, in the machine's own time.
  return momentText(new Date(instant).toLocaleString('sv').replace(' ', 'T'));
}
