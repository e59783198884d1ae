import picocolors from 'picocolors';
import type { Terminal } from '../terminal.ts';

export type Colours = ReturnType<typeof picocolors.createColors>;

/** Colours where the terminal takes them and nobody asked for none (`NO_COLOR`); else plain text. */
export function coloursFor(terminal: Terminal): Colours {
  return picocolors.createColors(terminal.colours);
}
