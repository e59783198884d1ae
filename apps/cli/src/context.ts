import type { Command } from 'commander';
import { type Colours, coloursFor } from './print/colours.ts';
import { type Shared, sharedOf } from './shared-options.ts';
import type { Terminal } from './terminal.ts';

/** Thin and no-break spaces are for print; a terminal and its tools want plain ones. */
const TYPE_SPACES = /[\u00a0\u2009\u202f]/g;

/** What a command works with besides its own options. */
export class Context {
  readonly terminal: Terminal;
  readonly colours: Colours;
  /** Left behind by a command that did its work only in part. */
  exitCode = 0;

  constructor(terminal: Terminal) {
    this.terminal = terminal;
    this.colours = coloursFor(terminal);
  }

  shared(command: Command): Shared {
    return sharedOf(command, this.terminal.env);
  }

  /** Prints the outcome: one JSON value alone, or lines for a person. */
  answer(shared: Shared, json: unknown, lines: () => string[]): void {
    if (shared.json) this.terminal.out(`${JSON.stringify(json, null, 2)}\n`);
    else this.terminal.out(`${lines().join('\n').replace(TYPE_SPACES, ' ')}\n`);
  }

  /** One line of progress on standard error, written over; only where a person watches. */
  progress(text: string): void {
    if (this.terminal.watched) this.terminal.err(`\r\u001b[K${text}`);
  }
}
