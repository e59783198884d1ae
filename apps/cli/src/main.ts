import { basename } from 'node:path';
import { Command, CommanderError } from 'commander';
import { addCommands } from './commands/index.ts';
import { Context, plainSpaces } from './context.ts';
import { fileTrouble } from './file-trouble.ts';
import { Refusal, refusalText } from './refusal.ts';
import { withShared } from './shared-options.ts';
import { processTerminal, type Terminal } from './terminal.ts';

const DONE = 0;
const NOT_DONE = 1;
const WRONG_USAGE = 2;

/**
 * Runs one command line and gives its exit code: 0 all done, 1 something could not be done (and why is said), 2 wrong
 * usage. `argv` is without the program: `['list', '--json']`.
 */
export async function run(argv: string[], terminal: Terminal = processTerminal()): Promise<number> {
  const json = argv.includes('--json');
  const context = new Context(terminal);
  if (argv[0] === '--version') {
    terminal.out(`${(await import('@pullbook/workshop')).programVersion()}\n`);
    return DONE;
  }
  const program = withShared(new Command('pullbook'))
    .description(
      'Pull, correct, compare, publish: what a change to an engine did to power, torque and boost.',
    )
    .exitOverride()
    .configureOutput({
      writeOut: terminal.out,
      writeErr: (text) => (json ? undefined : terminal.err(text)),
    })
    .showHelpAfterError('(pullbook help shows every command)')
    .option('--version', 'print the version of the program')
    .addHelpText(
      'after',
      '\nA planning and recording aid, not protection: makers’ limits, local codes and qualified people come first.',
    );
  addCommands(program, context);
  try {
    await program.parseAsync(argv, { from: 'user' });
    return context.exitCode;
  } catch (trouble) {
    return troubleCode(fileTrouble(trouble), context, json);
  }
}

function troubleCode(trouble: unknown, context: Context, json: boolean): number {
  if (trouble instanceof CommanderError) {
    if (trouble.exitCode === 0) return DONE;
    if (json) printJson(context, 'wrong-usage', trouble.message.replace(/^error: /, ''), []);
    return WRONG_USAGE;
  }
  if (!(trouble instanceof Error)) throw trouble;
  const known = trouble instanceof Refusal || trouble.name === 'BookTrouble';
  const code = known ? (trouble as Refusal).code : 'internal';
  const message = known
    ? trouble.message
    : `Pullbook failed at this: ${trouble.message.replace(/\.$/u, '')}. What is in the book is untouched.`;
  if (json) printJson(context, code, message, trouble instanceof Refusal ? trouble.remarks : []);
  else context.terminal.err(`${forPeople(trouble, message, context)}\n`);
  if (!known && context.terminal.env.PULLBOOK_TRACE) context.terminal.err(`${trouble.stack}\n`);
  return context.exitCode === DONE ? NOT_DONE : context.exitCode;
}

/** A refusal with its figures in the units chosen, with plain spaces for a terminal. */
function forPeople(trouble: Error, message: string, context: Context): string {
  if (!(trouble instanceof Refusal) || trouble.remarks.length === 0) return message;
  return plainSpaces(refusalText(trouble.remarks, context.wordsIn()));
}

function printJson(context: Context, code: string, message: string, remarks: Refusal['remarks']): void {
  const edge = remarks.map(({ line = null, column = null, message: words, level, code: name }) => ({
    line,
    column,
    message: words,
    level,
    code: name,
    file: null,
  }));
  context.terminal.out(`${JSON.stringify({ error: { code, message, remarks: edge } }, null, 2)}\n`);
}

/** Started as a program (by its bundle, or this file), not taken in by a test. */
if (/^(pullbook(\.mjs)?|main\.ts)$/.test(basename(process.argv[1] ?? ''))) {
  process.exitCode = await run(process.argv.slice(2));
}
