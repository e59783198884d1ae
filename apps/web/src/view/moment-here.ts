import { momentText } from '@pullbook/views';

// Swedish writes a date as ISO 8601 does, in the machine's own time.
const here = (instant: string): string => new Date(instant).toLocaleString('sv');

/** An instant by the clock of this machine: `14 March 2026 10:42`. */
export const momentHere = (instant: string): string => momentText(here(instant).replace(' ', 'T'));

/** Its day by the clock of this machine: `14 March 2026`. */
export const dayHere = (instant: string): string => momentText(here(instant).slice(0, 10));
