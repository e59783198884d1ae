import type { Command } from 'commander';
import { type Colours, coloursFor } from './print/colours.ts';
import { type Shared, sharedOf } from './shared-options.ts';
import type { Terminal } from './terminal.ts';

/** Thin and no-break spaces are for print; a terminal and its tools want plain ones. */
const TYPE_SPACES = /[\u00a0\u2009\u202f]/g;

export const plainSpaces = (text: string): string => text.replace(TYPE_SPACES, ' ');

/** What a command works with besides its own options. */
export class Context {
  readonly terminal: Terminal;
  readonly colours: Colours;
  /** Left behind by a command that did its work only in part. */
  exitCode = 0;
  private called: Shared | null = null;

  constructor(terminal: Terminal) {
    this.terminal = terminal;
    this.colours = coloursFor(terminal);
  }

  /** The shared options of the command that was called. */
  shared(command: Command): Shared {
    this.called = sharedOf(command, this.terminal.env);
    return this.called;
  }

  /** Units of what is said to a person; `null` for JSON, and before a command was called. */
  wordsIn(): Shared['view'] | null {
    return this.called?.wordsIn() ?? null;
  }

  /** Prints the outcome: one JSON value alone, or lines for a person. */
  answer(shared: Shared, json: unknown, lines: () => string[]): void {
    if (shared.json) this.terminal.out(`${JSON.stringify(json, null, 2)}\n`);
    else this.terminal.out(`${plainSpaces(lines().join('\n'))}\n`);
  }

  /** One line of progress on standard error, written over; only where a person watches. */
  progress(text: string): void {
    if (this.terminal.watched) this.terminal.err(`\r\u001b[K${text}`);
  }
}
